import type { Edit } from '../change';
import type { Block, CellState, SheetOutline, Snapshot } from '../port';
import { cellsOf } from '../snapshot';

const EMPTY: CellState = { value: null };

/** The cells of a sheet that were read, with room for what is written. */
const cellsOn = (snapshot: Snapshot, sheet: SheetOutline): CellState[][] =>
  cellsOf(snapshot, { sheet: sheet.name, row: 0, column: 0, rows: sheet.rows, columns: sheet.columns });

const put = (cells: CellState[][], edit: Edit & { kind: 'write' }): void => {
  edit.cells.forEach((line, down) =>
    line.forEach((input, across) => {
      if (input === undefined) return;
      const [row, column] = [edit.row + down, edit.column + across];
      const on = (cells[row] ??= []);
      // A formula shows what stood there until it is worked out.
      on[column] =
        typeof input === 'object' && input !== null
          ? { value: on[column]?.value ?? null, formula: input.formula }
          : { value: input === '' ? null : input };
    }),
  );
};

const blockOf = (sheet: string, cells: readonly (readonly CellState[])[]): Block => {
  const columns = Math.max(
    0,
    ...Array.from(cells, (line: readonly CellState[] | undefined) => line?.length ?? 0),
  );
  return {
    area: { sheet, row: 0, column: 0, rows: cells.length, columns },
    cells: Array.from({ length: cells.length }, (_r, row) =>
      Array.from({ length: columns }, (_c, column) => cells[row]?.[column] ?? EMPTY),
    ),
  };
};

/** What a reading would tell once the edits are applied, as far as its sheets were read from A1 on. */
export const snapshotAfter = (snapshot: Snapshot, edits: readonly Edit[]): Snapshot => {
  const sheets = new Map(snapshot.sheets.map((sheet) => [sheet.name, sheet]));
  const names = { ...snapshot.names };
  const written = new Map<string, CellState[][]>();
  for (const edit of edits) {
    if (edit.kind === 'addSheet')
      sheets.set(edit.sheet, { name: edit.sheet, rows: 0, columns: 0, merges: [] });
    if (edit.kind === 'name') {
      for (const known of Object.keys(names))
        if (known.toLowerCase() === edit.name.toLowerCase()) delete names[known];
      names[edit.name] = edit.area;
    }
    if (edit.kind !== 'write') continue;
    const cells = written.get(edit.sheet) ?? cellsOn(snapshot, sheets.get(edit.sheet)!);
    put(cells, edit);
    written.set(edit.sheet, cells);
  }
  const blocks = [...written].map(([sheet, cells]) => blockOf(sheet, cells));
  for (const { area } of blocks)
    sheets.set(area.sheet, { ...sheets.get(area.sheet)!, rows: area.rows, columns: area.columns });
  return {
    ...snapshot,
    sheets: [...sheets.values()],
    names,
    blocks: [...blocks, ...snapshot.blocks.filter(({ area }) => !written.has(area.sheet))],
  };
};
