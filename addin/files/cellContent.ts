import type { Cell } from '@cj-tech-master/excelts';

import type { CellValue } from '../workbook/change';
import { feedSpelling } from '../workbook/formula/feedSpelling';
import { serialDay } from './days';
import type { FileCell } from './rowPages';

/** Functions newer than the file format are stored under a prefix that no user types. */
const PREFIXES = /_xlfn\.(?:_xlws\.)?|_xlws\./g;

const plain = (value: unknown): CellValue => {
  if (value instanceof Date) return serialDay(value);
  return typeof value === 'number' || typeof value === 'string' || typeof value === 'boolean' ? value : null;
};

/** What an earlier program had computed. */
const result = (value: unknown): FileCell =>
  value && typeof value === 'object' && 'error' in value
    ? { value: null, error: String(value.error) }
    : { value: plain(value) };

/** What a file's cell holds; undefined for an empty one. */
export const contentOf = (cell: Cell): FileCell | undefined => {
  const { value } = cell;
  if (value === null || value === undefined || value === '') return undefined;
  if (typeof value !== 'object' || value instanceof Date) return { value: plain(value) };
  if ('formula' in value || 'sharedFormula' in value) {
    const { formula } = cell;
    const computed = result(cell.result);
    return formula ? { ...computed, formula: feedSpelling(`=${formula.replace(PREFIXES, '')}`) } : computed;
  }
  if ('error' in value) return { value: null, error: String(value.error) };
  if ('richText' in value && value.richText)
    return { value: value.richText.map(({ text }) => text).join('') };
  if ('text' in value) return { value: String(value.text) };
  if ('checkbox' in value) return { value: value.checkbox };
  return undefined;
};
