import type { CellState } from '../port';

const SHORT = 40;

const givenWords = (cell: CellState): string => {
  if (cell.error !== undefined) return `the cell shows ${cell.error}`;
  const text = cell.value === null ? '' : String(cell.value).trim();
  if (text === '') return 'nothing was given';
  return `“${text.length > SHORT ? `${text.slice(0, SHORT)}…` : text}” was given`;
};

/**
 * Why a cell cannot be read: where it is, what was given and what is allowed.
 *
 * @example cellSentence('Plants, row 12, How many', { value: 'lots' }, 'a whole number of 0 or more')
 * // 'Plants, row 12, How many: “lots” was given; use a whole number of 0 or more.'
 */
export const cellSentence = (where: string, cell: CellState, allowed: string): string =>
  `${where}: ${givenWords(cell)}; use ${allowed}.`;
