import { amountIn, toAmount } from '../measuring/amounts';
import { strength } from '../measuring/dilution';
import type { KitchenMeasure } from '../measuring/kitchenMeasure';
import { finestMeasure, measure } from '../measuring/kitchenMeasure';
import type { Amount, Density, Litres, Rate } from '../measuring/quantity';
import type { Unit } from '../measuring/units';
import { cardStep } from './cardStep';
import { numberInWords } from './inWords';
import { passesRate } from './labelRate';
import type { Refusal } from './round';

/** A measure for the card, and how it was rounded. */
export interface CardMeasure extends KitchenMeasure {
  /** 'down' where the nearest measure would pass the label's greatest rate. */
  readonly rounding: 'nearest' | 'down';
}

/**
 * An amount of product in the measures that people own, never above a label's greatest rate.
 *
 * To a step that suits the amount (`cardStep`): the nearest measure, or the one below where the nearest in that volume
 * passes the label's greatest rate. Where a rate above the label is planned with a reason, that rate takes the
 * label's place, so that rounding adds nothing.
 *
 * Definition: `measure` of the product for the fill; the measures' source is named there.
 *
 * @param amount       product for the fill, > 0
 * @param unit         of volume or mass that the card measures in
 * @param rate         product for each litre, as planned
 * @param greatestRate the label's, undefined where not known
 * @param volume       made up in the fill, L, > 0
 * @param density      of the product as measured, g/mL, > 0; needed from volume to mass or back
 * @returns a refusal where the density is needed and missing, or the amount is too small to measure in that unit
 * @throws RangeError for a unit of another family
 * @example 1 tbsp/gal in 60 gal, in cups: '3 3/4 cups'
 */
export const cardMeasure = (
  amount: Amount,
  unit: Unit,
  rate: Rate,
  greatestRate: Rate | undefined,
  volume: Litres,
  density?: Density,
): CardMeasure | Refusal => {
  const exact = amountIn(amount, unit, density);
  if (exact === undefined) {
    return {
      refused:
        `Density: nothing was given, and measuring in ${unit.token} goes between volume and mass; ` +
        'use the grams that one millilitre weighs.',
      place: 'mix',
    };
  }
  const finest = finestMeasure(unit);
  const tooSmall: Refusal = {
    refused:
      `Amount: ${numberInWords(exact)} ${unit.token} was given, less than the finest measure that keeps to the label; ` +
      `use an amount of ${numberInWords(finest.step)} ${finest.unit.token} or more.`,
    place: 'mix',
  };
  const step = cardStep(exact, unit);
  const nearest = measure(exact, unit, step);
  if (nearest === undefined) return tooSmall;
  const limit = greatestRate !== undefined && passesRate(rate, greatestRate, density) ? rate : greatestRate;
  const mixed = strength(toAmount(nearest.measured, unit), volume);
  // Without a density the two kinds cannot be compared; then rounding down is the safe side.
  if (limit === undefined || passesRate(mixed, limit, density) === false)
    return { ...nearest, rounding: 'nearest' };
  const below = measure(exact, unit, step, 'down');
  return below === undefined ? tooSmall : { ...below, rounding: 'down' };
};
