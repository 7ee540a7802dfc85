import { columnLetters, columnNumber } from '../address';
import type { Area } from '../change';

/** Rows or columns put in (count > 0) or taken out (count < 0) at an index of one sheet. */
export interface Shift {
  readonly sheet: string;
  readonly axis: 'row' | 'column';
  readonly at: number;
  readonly count: number;
}

/** Where an index stands afterwards; undefined where its row or column is taken out. */
export const shiftIndex = (index: number, { at, count }: Shift): number | undefined => {
  if (index < at) return index;
  if (count < 0 && index < at - count) return undefined;
  return index + count;
};

/** First and last index of a span afterwards: it grows with what is put in between, and shrinks. */
const shiftSpan = (
  start: number,
  size: number,
  { at, count }: Shift,
): { start: number; size: number } | undefined => {
  const end = start + size;
  if (count >= 0) {
    if (at >= end) return { start, size };
    return at <= start ? { start: start + count, size } : { start, size: size + count };
  }
  const gone = -count;
  const taken = Math.max(0, Math.min(end, at + gone) - Math.max(start, at));
  const before = Math.max(0, Math.min(start, at + gone) - Math.min(start, at));
  return taken === size ? undefined : { start: start - before, size: size - taken };
};

/** Where an area stands afterwards; undefined where all of it is taken out. */
export const shiftArea = (area: Area, shift: Shift): Area | undefined => {
  if (area.sheet !== shift.sheet) return area;
  if (shift.axis === 'row') {
    const span = shiftSpan(area.row, area.rows, shift);
    return span && { ...area, row: span.start, rows: span.size };
  }
  const span = shiftSpan(area.column, area.columns, shift);
  return span && { ...area, column: span.start, columns: span.size };
};

const STRING = /"(?:[^"]|"")*"/.source;
const SHEET = /(?:'(?:[^']|'')+'|[A-Za-z_][\w.]*)!/.source;
const CELL = /\$?[A-Za-z]{1,3}\$?\d{1,7}/.source;
const REFERENCE = new RegExp(`${STRING}|(${SHEET})?(?<![\\w.])(${CELL})(?::(${CELL}))?(?![\\w.(])`, 'g');

const unquote = (prefix: string): string => {
  const name = prefix.slice(0, -1);
  return name.startsWith("'") ? name.slice(1, -1).replaceAll("''", "'") : name;
};

interface Corner {
  readonly fixedColumn: string;
  readonly column: number;
  readonly fixedRow: string;
  readonly row: number;
}

const corner = (text: string): Corner => {
  const [, fixedColumn = '', letters = '', fixedRow = '', digits = ''] =
    /^(\$?)([A-Za-z]+)(\$?)(\d+)$/.exec(text) ?? [];
  return { fixedColumn, column: columnNumber(letters), fixedRow, row: Number(digits) - 1 };
};

const spell = (c: Corner, row: number, column: number): string =>
  `${c.fixedColumn}${columnLetters(column)}${c.fixedRow}${row + 1}`;

/** A formula's text with every reference outside its strings rewritten. */
const rewrite = (
  formula: string,
  each: (sheet: string | undefined, prefix: string, from: string, to: string | undefined) => string,
): string =>
  formula.replace(
    REFERENCE,
    (whole, prefix: string | undefined, from: string | undefined, to: string | undefined) =>
      from === undefined
        ? whole
        : each(prefix === undefined ? undefined : unquote(prefix), prefix ?? '', from, to),
  );

/** What a formula on `home` reads after the shift; a reference to cells that are gone is #REF!. */
export const shiftFormula = (formula: string, home: string, shift: Shift): string =>
  rewrite(formula, (sheet, prefix, from, to) => {
    const start = corner(from);
    const end = to === undefined ? start : corner(to);
    const area = {
      sheet: sheet ?? home,
      row: start.row,
      column: start.column,
      rows: end.row - start.row + 1,
      columns: end.column - start.column + 1,
    };
    const moved = shiftArea(area, shift);
    if (!moved) return `${prefix}#REF!`;
    const first = spell(start, moved.row, moved.column);
    return to === undefined
      ? prefix + first
      : `${prefix}${first}:${spell(end, moved.row + moved.rows - 1, moved.column + moved.columns - 1)}`;
  });

/** What a formula reads after a sheet has another name. */
export const renameInFormula = (formula: string, from: string, to: string): string =>
  rewrite(formula, (sheet, prefix, first, last) => {
    const named = sheet?.toLowerCase() === from.toLowerCase() ? `'${to.replaceAll("'", "''")}'!` : prefix;
    return last === undefined ? named + first : `${named}${first}:${last}`;
  });

/** What a formula reads after it is copied down by some rows: rows without $ move along. */
export const moveFormulaDown = (formula: string, rows: number): string =>
  rewrite(formula, (_sheet, prefix, first, last) => {
    const move = (text: string) => {
      const c = corner(text);
      return spell(c, c.fixedRow ? c.row : c.row + rows, c.column);
    };
    return last === undefined ? prefix + move(first) : `${prefix}${move(first)}:${move(last)}`;
  });
