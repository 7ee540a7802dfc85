import { contains } from './address';
import type { Area, CellInput, Edit, StyleToken } from './change';
import type { Snapshot } from './port';
import { cellAt, isEmpty, usedArea } from './snapshot';

/** One cell of a sheet that the program lays out as a page, not as a table. */
export interface PageCell {
  readonly row: number;
  readonly column: number;
  readonly input: CellInput;
  readonly style?: StyleToken;
  readonly format?: string;
  readonly wrap?: boolean;
}

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

const plain = (area: Area): Edit[] => [
  { kind: 'style', area, style: 'plain' },
  { kind: 'format', area, format: 'General' },
];

const blank = ({ rows, columns }: Area): CellInput[][] =>
  Array.from({ length: rows }, () => Array<CellInput>(columns).fill(null));

/** Edits that empty areas of an earlier page and take its looks off. */
export const clearedEdits = (areas: readonly Area[]): Edit[] =>
  areas.flatMap((area) => [
    ...plain(area),
    { kind: 'write', sheet: area.sheet, row: area.row, column: area.column, cells: blank(area) },
  ]);

/** Lays the cells of one part of a page out; what lies between them becomes empty and plain. */
export const pageEdits = (sheet: string, cells: readonly PageCell[]): Edit[] => {
  const area = extent(sheet, cells);
  const grid = blank(area);
  for (const { row, column, input } of cells) grid[row - area.row]![column - area.column] = input;
  return [
    ...plain(area),
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

/** True where nothing of the user's stands in an area; what an earlier page of ours holds does not count. */
export const isFree = (snapshot: Snapshot, area: Area, earlier: readonly Area[]): boolean => {
  const { sheet } = area;
  const used = usedArea(snapshot, sheet);
  if (!used) return true;
  const [lastRow, lastColumn] = [
    Math.min(used.rows, area.row + area.rows),
    Math.min(used.columns, area.column + area.columns),
  ];
  for (let row = area.row; row < lastRow; row += 1)
    for (let column = area.column; column < lastColumn; column += 1)
      if (
        !isEmpty(cellAt(snapshot, sheet, row, column)) &&
        !earlier.some((page) => contains(page, sheet, row, column))
      )
        return false;
  return true;
};
