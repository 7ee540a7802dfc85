import type { Area } from './change';

/** "A" for 0, "Z" for 25, "AA" for 26. */
export const columnLetters = (column: number): string => {
  let letters = '';
  for (let rest = column; rest >= 0; rest = Math.floor(rest / 26) - 1)
    letters = String.fromCharCode(65 + (rest % 26)) + letters;
  return letters;
};

/** The column that letters name, from 0; upper or lower case. */
export const columnNumber = (letters: string): number => {
  let number = 0;
  for (const letter of letters.toUpperCase()) number = number * 26 + letter.charCodeAt(0) - 64;
  return number - 1;
};

/** "B3", as a user reads it, for row 2, column 1. */
export const cellAddress = (row: number, column: number): string => `${columnLetters(column)}${row + 1}`;

/** "B3:C9", or "B3" where the area is one cell. */
export const rangeAddress = ({ row, column, rows, columns }: Area): string => {
  const [first, last] = [cellAddress(row, column), cellAddress(row + rows - 1, column + columns - 1)];
  return first === last ? first : `${first}:${last}`;
};

/** Letters alone, which no spreadsheet takes for a cell; Excel stores such names without quotes. */
const PLAIN = /^(?!(?:true|false)$)[a-z]{3,}$/i;

/** A sheet's name as a formula spells it: quoted where any spreadsheet might want quotes. */
export const sheetPrefix = (sheet: string): string =>
  PLAIN.test(sheet) ? `${sheet}!` : `'${sheet.replaceAll("'", "''")}'!`;

/** "'Round card'!$A$2:$C$9", which does not move when the formula is copied. */
export const fixedReference = (area: Area): string => {
  const corner = (row: number, column: number) => `$${columnLetters(column)}$${row + 1}`;
  const first = corner(area.row, area.column);
  const last = corner(area.row + area.rows - 1, area.column + area.columns - 1);
  return sheetPrefix(area.sheet) + (first === last ? first : `${first}:${last}`);
};

/** True where the two areas share a cell. */
export const overlap = (a: Area, b: Area): boolean =>
  a.sheet === b.sheet &&
  a.row < b.row + b.rows &&
  b.row < a.row + a.rows &&
  a.column < b.column + b.columns &&
  b.column < a.column + a.columns;

export const sameArea = (a: Area, b: Area): boolean =>
  a.sheet === b.sheet &&
  a.row === b.row &&
  a.column === b.column &&
  a.rows === b.rows &&
  a.columns === b.columns;

export const contains = (area: Area, sheet: string, row: number, column: number): boolean =>
  area.sheet === sheet &&
  row >= area.row &&
  row < area.row + area.rows &&
  column >= area.column &&
  column < area.column + area.columns;
