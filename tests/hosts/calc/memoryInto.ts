import type { Change, CellInput, Edit } from '../../../addin/workbook/change';
import type { MemoryBook, MemorySheet } from '../../../addin/workbook/memory/book';
import type { Outline } from '../../../addin/workbook/port';

const inputOf = ({ value, formula }: { value: CellInput; formula?: string }): CellInput =>
  formula === undefined ? value : { formula };

/** Rows of a sheet from A1, undefined where nothing stands. */
const rowsOf = ({ cells }: MemorySheet): (CellInput | undefined)[][] => {
  const last = Math.max(-1, ...cells.keys());
  const width = Math.max(0, ...[...cells.values()].flatMap((row) => [...row.keys()].map((at) => at + 1)));
  return Array.from({ length: last + 1 }, (_, row) =>
    Array.from({ length: width }, (__, column) => {
      const cell = cells.get(row)?.get(column);
      return cell === undefined ? undefined : inputOf(cell);
    }),
  );
};

/** A change that writes the cells and names of a memory workbook into one that has none of its sheets. */
export const writtenInto = (book: MemoryBook, { sheets }: Outline): Change => {
  const there = new Set(sheets.map(({ name }) => name));
  const filled = book.sheets.filter(({ cells }) => cells.size > 0);
  return {
    title: 'The same in another program',
    edits: [
      ...filled.flatMap(({ name }): Edit[] => (there.has(name) ? [] : [{ kind: 'addSheet', sheet: name }])),
      ...filled.map((sheet): Edit => ({
        kind: 'write',
        sheet: sheet.name,
        row: 0,
        column: 0,
        cells: rowsOf(sheet) as CellInput[][],
      })),
      ...Object.entries(book.names).map(([name, area]): Edit => ({ kind: 'name', name, area })),
    ],
  };
};
