import { columnLetters, columnNumber } from '../address';
import type { Area } from '../change';

/** A corner of a reference, counted from 0; fixed where a $ stands before it. */
export interface Corner {
  readonly column: number;
  readonly row: number;
  readonly fixedColumn: boolean;
  readonly fixedRow: boolean;
}

/** A token of the kind `cells`, taken apart. */
export interface Reference {
  /** As spelled, with its exclamation mark; '' where none is. */
  readonly prefix: string;
  /** Undefined where the cells are on the formula's own sheet. */
  readonly sheet: string | undefined;
  readonly first: Corner;
  readonly last: Corner | undefined;
}

const PARTS = /^(.*!)?(\$?)([A-Z]+)(\$?)(\d+)(?::(\$?)([A-Z]+)(\$?)(\d+))?$/i;

const corner = (fixedColumn: string, letters: string, fixedRow: string, digits: string): Corner => ({
  column: columnNumber(letters),
  row: Number(digits) - 1,
  fixedColumn: fixedColumn !== '',
  fixedRow: fixedRow !== '',
});

/** The sheet that stands before cells or a name: "Round card" for "'Round card'!"; undefined for ''. */
export const sheetOf = (prefix: string): string | undefined => {
  if (prefix === '') return undefined;
  const name = prefix.slice(0, -1);
  return name.startsWith("'") ? name.slice(1, -1).replaceAll("''", "'") : name;
};

/** @example referenceOf('Rig!$B4').first // { column: 1, row: 3, fixedColumn: true, fixedRow: false } */
export const referenceOf = (cells: string): Reference => {
  const found = PARTS.exec(cells);
  if (!found) throw new Error(`“${cells}” is no reference to cells.`);
  const [, prefix = '', a = '', b = '', c = '', d = '', e = '', f, g = '', h = ''] = found;
  return {
    prefix,
    sheet: sheetOf(prefix),
    first: corner(a, b, c, d),
    last: f === undefined ? undefined : corner(e, f, g, h),
  };
};

export const spelledCorner = ({ fixedColumn, fixedRow }: Corner, row: number, column: number): string =>
  `${fixedColumn ? '$' : ''}${columnLetters(column)}${fixedRow ? '$' : ''}${row + 1}`;

/** The cells between two corners, whichever of them comes first. */
export const between = (
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
