import { fieldNumber } from '../number';
import { andList } from '../../addin/workbook/fields/holds';
import { rangeAddress } from '../../addin/workbook/address';
import { plural } from '../quantityWords';
import type { CellsHeld, Rows, Single, Value } from './cellValues';
import { isRows } from './spreadsheetFunctions';

/** As many values are told one by one, and as many ranges. */
const TOLD_SINGLY = 6;

const one = (value: Single): string => {
  if (typeof value === 'number') return fieldNumber(value);
  if (typeof value === 'boolean') return value ? 'TRUE' : 'FALSE';
  if (value === null || value === '') return 'nothing';
  return typeof value === 'string' ? `"${value}"` : value.error;
};

/** @example rowsInWords([[24, 25]], 2) // '24 and 25' */
const rowsInWords = (rows: Rows, size: number): string => {
  const cells = rows.flat();
  if (size <= TOLD_SINGLY) return andList(cells.map(one));
  const numbers = cells.filter((cell) => typeof cell === 'number');
  const [least, most] = numbers.reduce(
    ([a, b], n) => [Math.min(a, n), Math.max(b, n)],
    [Infinity, -Infinity],
  );
  const filled = cells.filter((cell) => cell !== '' && cell !== null).length;
  return [
    plural(size, 'cell'),
    ...(filled < size ? [`${filled.toLocaleString('en-US')} of them filled`] : []),
    ...(numbers.length > 0 ? [`numbers from ${one(least)} to ${one(most)}`] : []),
  ].join(', ');
};

/** @example valueInWords(0.7) // '0.7' */
export const valueInWords = (value: Value): string =>
  isRows(value) ? rowsInWords(value, value.length * (value[0]?.length ?? 0)) : one(value);

/** What cells hold; of a long range only how many they are. Whole columns and rows count as far as anything stands there. */
export const heldInWords = ({ kind, value, area, used }: CellsHeld): string => {
  const { rows, columns } = kind === 'columns' || kind === 'rows' ? (used ?? { rows: 0, columns: 0 }) : area;
  if (value === undefined) return `${plural(rows * columns, 'cell')}, too many to follow here`;
  return isRows(value) ? rowsInWords(value, rows * columns) : one(value);
};

/** "C5", "C2:C12 on Plants" or "Rig_flow in B9 on Rig", as seen from a sheet. */
export const cellsInWords = ({ kind, text, area }: CellsHeld, seenFrom: string): string => {
  const place =
    kind === 'name'
      ? rangeAddress(area)
      : text
          .slice(text.lastIndexOf('!') + 1)
          .replaceAll('$', '')
          .toUpperCase();
  return `${kind === 'name' ? `${text} in ` : ''}${place}${area.sheet === seenFrom ? '' : ` on ${area.sheet}`}`;
};

/** Each with what it holds, where they are few: "B1 (0.7) and C1:C9 on Rig (9 cells)". */
export const togetherInWords = (cells: readonly CellsHeld[], seenFrom: string): string =>
  andList([
    ...cells.slice(0, TOLD_SINGLY).map((each) => `${cellsInWords(each, seenFrom)} (${heldInWords(each)})`),
    ...(cells.length > TOLD_SINGLY ? [`${cells.length - TOLD_SINGLY} more`] : []),
  ]);
