import type { ErrorCell } from '../../functions';
import type { Area } from '../../addin/workbook/change';
import type { CellsRead } from '../../addin/workbook/formula/reads';
import type { Snapshot, Workbook } from '../../addin/workbook/port';
import { cellAt } from '../../addin/workbook/snapshot';

/** One value of a cell or a formula: null is an argument left out, '' a blank cell. */
export type Single = number | string | boolean | null | ErrorCell;
export type Rows = readonly (readonly Single[])[];
/** What cells hold: one value, or rows of them. */
export type Value = Single | Rows;

/** Cells of one range that are read for an explanation; of a longer one none is followed further. */
const MOST_CELLS = 5_000;

/** Cells with what they hold now; undefined where they are too many to follow. */
export interface CellsHeld extends CellsRead {
  readonly value: Value | undefined;
}

const valueAt = (
  snapshot: Snapshot | undefined,
  { sheet, row, column }: Area,
  r: number,
  c: number,
): Single => {
  if (snapshot === undefined) return '';
  const { value, error } = cellAt(snapshot, sheet, row + r, column + c);
  return error === undefined ? (value ?? '') : { error };
};

const isLong = ({ used }: CellsRead): boolean => used !== undefined && used.rows * used.columns > MOST_CELLS;

/**
 * Reads what a formula reads, in one call of the port. What is empty past the cells in use is left away, alike for
 * areas of one size, so that they stay of one size; two rows stay two, so that a range is not taken for one value.
 */
export const readCells = async (workbook: Workbook, reads: readonly CellsRead[]): Promise<CellsHeld[]> => {
  const wanted = reads.flatMap((read) => (read.used && !isLong(read) ? [read.used] : []));
  const snapshot = wanted.length > 0 ? await workbook.read(wanted) : undefined;
  const most = (part: 'rows' | 'columns', { area }: CellsRead): number =>
    reads.reduce(
      (size, { area: other, used }) =>
        other[part] === area[part] ? Math.max(size, used?.[part] ?? 0) : size,
      Math.min(area[part], 2),
    );
  return reads.map((read) => {
    const { area } = read;
    if (isLong(read)) return { ...read, value: undefined };
    if (area.rows === 1 && area.columns === 1) return { ...read, value: valueAt(snapshot, area, 0, 0) };
    const [rows, columns] = [most('rows', read), most('columns', read)];
    const value = Array.from({ length: rows }, (_r, row) =>
      Array.from({ length: columns }, (_c, column) => valueAt(snapshot, area, row, column)),
    );
    return { ...read, value };
  });
};
