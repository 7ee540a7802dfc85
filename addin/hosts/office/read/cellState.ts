import type { CellState } from '../../../workbook/port';
import { feedSpelling } from '../../../workbook/formula/feedSpelling';

/** A cell as the program hands it over: `values`, `formulas` and `valueTypes` of one place. */
export interface RawCell {
  readonly value: unknown;
  readonly formula: unknown;
  readonly type: string;
}

/** A custom function that has not answered yet. */
export const isPending = ({ error }: CellState): boolean => error === '#BUSY!' || error === '#GETTING_DATA';

/**
 * A formula begins with “=”, and so may a text; the program tells a text as it is, without the mark that keeps it one.
 * A formula does not come to its own text.
 */
export const isFormula = (formula: unknown, value: unknown): formula is string =>
  typeof formula === 'string' && formula.startsWith('=') && formula !== value;

/** The cell as the port tells it; FEED functions in the program's own spelling, whichever of the two forms was stored. */
export const cellState = ({ value, formula: raw, type }: RawCell): CellState => {
  const formula = isFormula(raw, value) ? { formula: feedSpelling(raw) } : {};
  if (type === 'Error') return { value: null, ...formula, error: String(value) };
  if (typeof value === 'number' || typeof value === 'boolean') return { value, ...formula };
  return { value: typeof value === 'string' && value !== '' ? value : null, ...formula };
};
