import { columnLetters, columnNumber } from './address';
import type { Area } from './change';

/** A corner of a reference, counted from 0; fixed where a $ stands before it. */
export interface Corner {
  readonly column: number;
  readonly row: number;
  readonly fixedColumn: boolean;
  readonly fixedRow: boolean;
}

/** Cells as a formula spells them, taken apart. */
export interface Reference {
  /** As spelled, with its exclamation mark; '' where the cells are on the formula's own sheet. */
  readonly prefix: string;
  readonly first: Corner;
  readonly last: Corner | undefined;
}

const PARTS = /^(.+!)?(\$?)([A-Z]{1,3})(\$?)(\d+)(?::(\$?)([A-Z]{1,3})(\$?)(\d+))?$/i;

const corner = (fixedColumn = '', letters = '', fixedRow = '', digits = ''): Corner => ({
  column: columnNumber(letters),
  row: Number(digits) - 1,
  fixedColumn: fixedColumn !== '',
  fixedRow: fixedRow !== '',
});

/** @example referenceOf('Rig!$B4')?.first // { column: 1, row: 3, fixedColumn: true, fixedRow: false } */
export const referenceOf = (cells: string): Reference | undefined => {
  const found = PARTS.exec(cells);
  if (!found) return undefined;
  const [, prefix = '', a, b, c, d, ...others] = found;
  return { prefix, first: corner(a, b, c, d), last: others[1] === undefined ? undefined : corner(...others) };
};

/** "$B4", for a corner that has come to another place. */
export const spelledCorner = ({ fixedColumn, fixedRow }: Corner, row: number, column: number): string =>
  `${fixedColumn ? '$' : ''}${columnLetters(column)}${fixedRow ? '$' : ''}${row + 1}`;

/** The sheet before cells or a name: "Round card" for "'Round card'!", home for ''. */
export const sheetOf = <Home>(prefix: string, home: Home): string | Home => {
  if (prefix === '') return home;
  const name = prefix.slice(0, -1);
  return name.startsWith("'") ? name.slice(1, -1).replaceAll("''", "'") : name;
};

/** The cells between two corners, whichever of them comes first. */
export const areaBetween = (
  sheet: string,
  a: Pick<Corner, 'row' | 'column'>,
  b: Pick<Corner, 'row' | 'column'>,
): Area => ({
  sheet,
  row: Math.min(a.row, b.row),
  column: Math.min(a.column, b.column),
  rows: Math.abs(a.row - b.row) + 1,
  columns: Math.abs(a.column - b.column) + 1,
});

/**
 * The area that a reference such as 'Round card'!$A$2:$C$9 names, or undefined where it names something else.
 *
 * @param home the sheet that is meant where none is named; left out, one must be
 */
export const areaOfReference = (reference: string, home?: string): Area | undefined => {
  const found = referenceOf(reference.trim().replace(/^=?(?:\[[^\]]*\])?/, ''));
  const sheet = found && sheetOf(found.prefix, home);
  return sheet === undefined ? undefined : areaBetween(sheet, found!.first, found!.last ?? found!.first);
};
