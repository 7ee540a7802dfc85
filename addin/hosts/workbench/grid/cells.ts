import type { CellValueType, ICellData, IDocumentData } from '@univerjs/core';

import type { CellInput, CellValue } from '../../../workbook/change';
import type { CellState } from '../../../workbook/port';
import { feedSpelling } from '../../../workbook/formula/feedSpelling';
import { BOOLEAN, FORCE_STRING, NUMBER, STRING } from './kept';

/** The error values that a formula of this grid can come to. */
export const ERRORS: ReadonlySet<string> = new Set([
  '#DIV/0!',
  '#N/A',
  '#NAME?',
  '#NULL!',
  '#NUM!',
  '#REF!',
  '#VALUE!',
  '#SPILL!',
  '#CALC!',
  '#CYCLE!',
  '#ERROR!',
  '#CONNECT!',
  '#GETTING_DATA',
]);

const nothingElse = { f: null, si: null, p: null, ref: null, xf: null } as const;

/** What the grid is told for a cell; everything that stood there before is replaced, its look stays. */
export const gridCell = (input: CellInput): ICellData => {
  if (input === null || input === '') return { ...nothingElse, v: null, t: null };
  if (typeof input === 'object') return { ...nothingElse, f: input.formula, v: null, t: null };
  if (typeof input === 'number') return { ...nothingElse, v: input, t: NUMBER };
  if (typeof input === 'boolean') return { ...nothingElse, v: input ? 1 : 0, t: BOOLEAN };
  return { ...nothingElse, v: input, t: textKind(input) };
};

/** Text that the grid would take for a number or a truth word is forced to stay text. */
const textKind = (text: string): CellValueType =>
  text.trim() !== '' && (Number.isFinite(Number(text)) || /^(true|false)$/i.test(text.trim()))
    ? FORCE_STRING
    : STRING;

/** The plain text of a cell with differently formatted parts; its lines end with \r, the whole with \r\n. */
const plainText = (document: IDocumentData): string =>
  (document.body?.dataStream ?? '').replace(/\r\n$/, '').replaceAll('\r', '\n');

/** The value alone, errors included as their text. */
export const gridValue = (cell: ICellData): CellValue => {
  if (cell.p) return plainText(cell.p) || null;
  const { v, t } = cell;
  if (v === null || v === undefined || v === '') return null;
  if (t === BOOLEAN) return typeof v === 'string' ? v.toUpperCase() === 'TRUE' || v === '1' : Boolean(v);
  if (t === NUMBER && typeof v === 'string') return Number.isFinite(Number(v)) ? Number(v) : v;
  return v;
};

/** True for a cell with nothing in it but perhaps a look. */
export const isBlank = (cell: ICellData): boolean => !cell.f && !cell.si && gridValue(cell) === null;

/**
 * A cell as the port tells it.
 *
 * @param formula the cell's formula; given apart, because copied formulas are kept by reference
 */
export const cellState = (cell: ICellData, formula: string | undefined): CellState => {
  const value = gridValue(cell);
  if (!formula) return { value };
  const spelled = feedSpelling(formula);
  return typeof value === 'string' && ERRORS.has(value)
    ? { value: null, formula: spelled, error: value }
    : { value, formula: spelled };
};
