import type { Cell } from '@cj-tech-master/excelts';
import { CellValueType, type ICellData } from '@univerjs/core';

import { gridCell } from '../grid/cells';
import { serialDay } from './days';

/** Functions newer than the file format are stored under a prefix that no user types. */
const PREFIXES = /_xlfn\.(?:_xlws\.)?|_xlws\./g;

const plain = (value: number | string | boolean): ICellData => {
  const { v, t } = gridCell(value);
  return { v, t };
};

/** What an earlier program had computed; shown until the grid has computed it anew. */
const result = (value: unknown): ICellData => {
  if (value instanceof Date) return plain(serialDay(value));
  if (typeof value === 'number' || typeof value === 'string' || typeof value === 'boolean')
    return plain(value);
  if (value && typeof value === 'object' && 'error' in value)
    return { v: String(value.error), t: CellValueType.STRING };
  return {};
};

/**
 * What a file's cell holds, as the grid keeps it; undefined for an empty one.
 *
 * @param spell how formulas are to be spelled
 */
export const gridContent = (cell: Cell, spell: (formula: string) => string): ICellData | undefined => {
  const { value } = cell;
  if (value === null || value === undefined || value === '') return undefined;
  if (typeof value !== 'object') return plain(value);
  if (value instanceof Date) return plain(serialDay(value));
  if ('formula' in value || 'sharedFormula' in value) {
    const formula = cell.formula;
    return formula
      ? { f: spell(`=${formula.replace(PREFIXES, '')}`), ...result(cell.result) }
      : result(cell.result);
  }
  if ('error' in value) return { f: `=${value.error}`, v: value.error, t: CellValueType.STRING };
  if ('richText' in value && value.richText) return plain(value.richText.map(({ text }) => text).join(''));
  if ('text' in value) return plain(String(value.text));
  if ('checkbox' in value) return plain(value.checkbox);
  return undefined;
};
