import { cameOf, sameFormula } from '../formula/sameFormula';
import type { CellState } from '../port';

/** Templates that earlier programs wrote, by what they worked out: "mix.label", or a line's name "Rig_flow". */
export type Renewed = Readonly<Record<string, readonly string[]>>;

/**
 * True where a cell that the sheet works out gets its formula: it has none, or still the one that this or an earlier
 * program wrote and that is out of date. What a user typed there stays, a formula too.
 *
 * @param now undefined for a cell that is about to be made
 */
export const isRenewed = (
  now: CellState | undefined,
  formula: string,
  before: readonly string[] = [],
): boolean => {
  if (now?.formula === undefined) return now?.value == null;
  const written = now.formula;
  return !sameFormula(written, formula) && [formula, ...before].some((one) => cameOf(written, one));
};
