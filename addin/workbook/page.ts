import type { Area, CellInput, Edit, StyleToken } from './change';

/** One cell of a sheet that the program lays out as a page, not as a table. */
export interface PageCell {
  readonly row: number;
  readonly column: number;
  readonly input: CellInput;
  readonly style?: StyleToken;
  readonly format?: string;
  readonly wrap?: boolean;
}

const spanning = (a: Area, b: Area | undefined): Area => {
  if (!b) return a;
  const row = Math.min(a.row, b.row);
  const column = Math.min(a.column, b.column);
  const rows = Math.max(a.row + a.rows, b.row + b.rows) - row;
  const columns = Math.max(a.column + a.columns, b.column + b.columns) - column;
  return { sheet: a.sheet, row, column, rows, columns };
};

/** The smallest area that holds the cells. */
export const extent = (sheet: string, cells: readonly PageCell[]): Area => {
  const rows = cells.map(({ row }) => row);
  const columns = cells.map(({ column }) => column);
  const [row, column] = [Math.min(...rows), Math.min(...columns)];
  return {
    sheet,
    row,
    column,
    rows: Math.max(...rows) - row + 1,
    columns: Math.max(...columns) - column + 1,
  };
};

/** Neighbours in a row that share a property become one area, so that a page is a few edits and not hundreds. */
const runs = <Value>(
  sheet: string,
  cells: readonly PageCell[],
  property: (cell: PageCell) => Value | undefined,
): { area: Area; value: Value }[] => {
  const found: { area: Area; value: Value }[] = [];
  for (const cell of [...cells].sort((a, b) => a.row - b.row || a.column - b.column)) {
    const value = property(cell);
    if (value === undefined) continue;
    const last = found.at(-1);
    const next = last && last.area.row === cell.row && last.area.column + last.area.columns === cell.column;
    if (last && next && last.value === value) {
      last.area = { ...last.area, columns: last.area.columns + 1 };
    } else {
      found.push({ area: { sheet, row: cell.row, column: cell.column, rows: 1, columns: 1 }, value });
    }
  }
  return found;
};

/**
 * Lays the cells out, over what an earlier page held in `previous`: cells between them become empty and plain. What
 * the user wrote outside both stays.
 */
export const pageEdits = (sheet: string, cells: readonly PageCell[], previous?: Area): Edit[] => {
  const area = spanning(extent(sheet, cells), previous && { ...previous, sheet });
  const grid: CellInput[][] = Array.from({ length: area.rows }, () =>
    Array<CellInput>(area.columns).fill(null),
  );
  for (const { row, column, input } of cells) grid[row - area.row]![column - area.column] = input;
  return [
    { kind: 'style', area, style: 'plain' },
    { kind: 'format', area, format: 'General' },
    { kind: 'write', sheet, row: area.row, column: area.column, cells: grid },
    ...runs(sheet, cells, ({ style }) => style).map(({ area, value }): Edit => ({
      kind: 'style',
      area,
      style: value,
    })),
    ...runs(sheet, cells, ({ format }) => format).map(({ area, value }): Edit => ({
      kind: 'format',
      area,
      format: value,
    })),
    ...runs(sheet, cells, ({ wrap }) => wrap || undefined).map(({ area }): Edit => ({ kind: 'wrap', area })),
  ];
};
