import type { ErrorCell, RawArgument, RawScalar } from './definition';

/** A range of more than one cell. */
export type Rows = readonly (readonly RawScalar[])[];

export const isErrorCell = (raw: unknown): raw is ErrorCell => {
  if (typeof raw !== 'object' || raw === null || Array.isArray(raw)) return false;
  const error = (raw as { error?: unknown }).error;
  return typeof error === 'string' && error !== '';
};

/**
 * The first error value among the arguments, in their order and row by row inside ranges.
 * It comes out of the function unchanged, whatever the other arguments are.
 */
export const firstError = (args: readonly RawArgument[]): ErrorCell | undefined => {
  for (const raw of args) {
    if (isErrorCell(raw)) return raw;
    if (!Array.isArray(raw)) continue;
    for (const row of raw as readonly unknown[]) {
      if (!Array.isArray(row)) continue;
      for (const cell of row as readonly unknown[]) if (isErrorCell(cell)) return cell;
    }
  }
  return undefined;
};

/** A 1 × 1 range is its one value, and a range without a cell is a blank one. */
export const single = (raw: RawArgument): RawScalar | Rows => {
  if (!Array.isArray(raw)) return raw as RawScalar;
  if (raw.length === 0) return '';
  const row: unknown = raw[0];
  if (raw.length > 1 || !Array.isArray(row) || row.length > 1) return raw as Rows;
  return row.length === 0 ? '' : ((row[0] as RawScalar) ?? '');
};

export const isRows = (raw: RawScalar | Rows): raw is Rows => Array.isArray(raw);

/** Rows of cells from a range or a single cell; undefined where it is neither. */
export const asRows = (raw: RawArgument): Rows | undefined => {
  if (!Array.isArray(raw)) return [[raw as RawScalar]];
  const rows = raw as readonly unknown[];
  return rows.every((row) => Array.isArray(row)) ? (rows as Rows) : undefined;
};

/** Nothing at all, or a cell with nothing in it. */
export const isBlank = (raw: unknown): boolean => raw === '' || raw === null || raw === undefined;

/** A blank cell and 0 cannot be told apart in every host, so for an optional argument either is left out. */
export const isLeftOut = (raw: unknown): boolean =>
  isBlank(raw) || raw === 0 || raw === false || (typeof raw === 'string' && raw.trim() === '');

/**
 * The number that a cell counts as: TRUE and FALSE are 1 and 0, a blank cell is 0.
 * Undefined for anything else; text that looks like a number is text.
 */
export const asNumber = (cell: RawScalar): number | undefined => {
  if (typeof cell === 'number') return cell;
  if (typeof cell === 'boolean') return cell ? 1 : 0;
  return isBlank(cell) ? 0 : undefined;
};
