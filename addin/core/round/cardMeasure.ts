import { amountIn } from '../measuring/amounts';
import { productFor } from '../measuring/dilution';
import { howMuch, type HowMuch } from '../measuring/howMuch';
import { measurable } from '../measuring/measurable';
import type { Amount, Density, Litres, Rate } from '../measuring/quantity';
import type { Unit } from '../measuring/units';

/** What to measure of a product for one fill. */
export interface CardMeasure extends Omit<HowMuch, 'stock'> {
  /** 'down' where the nearest measure would pass what is allowed. */
  readonly rounding: 'nearest' | 'down';
}

/** What may not be passed, in the unit; Infinity where no label says. */
const mostOf = (
  exact: number,
  unit: Unit,
  greatest: Rate | undefined,
  volume: Litres,
  density: Density | undefined,
): number => {
  if (greatest === undefined) return Infinity;
  // Without a density an amount of the other kind is not known; then rounding down is the safe side.
  return Math.max(exact, amountIn(productFor(greatest, volume), unit, density) ?? exact);
};

/**
 * An amount of product in the measures that people own, never above a label's greatest rate.
 *
 * As `howMuch` answers, or the next below where the nearest in that volume passes the label's greatest rate. Where
 * a rate above the label is planned with a reason, that rate takes the label's place, so that rounding adds nothing.
 *
 * Definition: `howMuch`; the measures' source is named there.
 *
 * @param amount       product for the fill, > 0
 * @param unit         of volume or mass that the card measures in; the result is in it
 * @param greatestRate the label's, undefined where not known
 * @param volume       made up in the fill, L, > 0
 * @param density      of the product as measured, g/mL, > 0; needed from volume to mass or back
 * @returns undefined where the density is needed and missing
 * @throws RangeError for a unit of another family
 * @example 1 tbsp/gal in 60 gal, in cups: '3 3/4 cups'
 */
export const cardMeasure = (
  amount: Amount,
  unit: Unit,
  greatestRate: Rate | undefined,
  volume: Litres,
  density?: Density,
): CardMeasure | undefined => {
  const exact = amountIn(amount, unit, density);
  if (exact === undefined) return undefined;
  const most = mostOf(exact, unit, greatestRate, volume, density);
  const { words, measured, error, tooLittle } = howMuch(exact, unit, most);
  const free = most < Infinity && !tooLittle ? measurable(exact, unit)?.words : undefined;
  // By their words: what a limit says in another unit differs from the same measure in its last digits.
  const down = free !== undefined && words !== free && measured <= exact;
  return { words, measured, error, tooLittle, rounding: down ? 'down' : 'nearest' };
};
