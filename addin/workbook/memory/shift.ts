import { sheetPrefix } from '../address';
import type { Area } from '../change';
import { respelled } from '../formula/tokens';
import { areaBetween, referenceOf, sheetOf, spelledCorner, type Corner, type Reference } from '../references';

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

/** A formula's text with every reference to cells rewritten. */
const rewrite = (formula: string, each: (reference: Reference) => string): string =>
  respelled(formula, ({ kind, text }) => (kind === 'cells' ? each(referenceOf(text)!) : text));

/** A reference with its corners at other places. */
const respell = (
  prefix: string,
  { first, last }: Reference,
  place: (corner: Corner, isLast: boolean) => readonly [row: number, column: number],
): string => {
  const start = prefix + spelledCorner(first, ...place(first, false));
  return last === undefined ? start : `${start}:${spelledCorner(last, ...place(last, true))}`;
};

/** What a formula on `home` reads after the shift; a reference to cells that are gone is #REF!. */
export const shiftFormula = (formula: string, home: string, shift: Shift): string =>
  rewrite(formula, (reference) => {
    const { prefix, first, last = first } = reference;
    const moved = shiftArea(areaBetween(sheetOf(prefix, home), first, last), shift);
    if (!moved) return `${prefix}#REF!`;
    return respell(prefix, reference, (_corner, isLast) =>
      isLast ? [moved.row + moved.rows - 1, moved.column + moved.columns - 1] : [moved.row, moved.column],
    );
  });

/** What a formula reads after a sheet has another name. */
export const renameInFormula = (formula: string, from: string, to: string): string =>
  rewrite(formula, (reference) => {
    const { prefix } = reference;
    const named = sheetOf(prefix, undefined)?.toLowerCase() === from.toLowerCase() ? sheetPrefix(to) : prefix;
    return respell(named, reference, ({ row, column }) => [row, column]);
  });

/** What a formula reads after it is copied down by some rows: rows without $ move along. */
export const moveFormulaDown = (formula: string, rows: number): string =>
  rewrite(formula, (reference) =>
    respell(reference.prefix, reference, ({ row, column, fixedRow }) => [
      fixedRow ? row : row + rows,
      column,
    ]),
  );
