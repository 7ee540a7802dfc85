import { convert } from '../measuring/units';
import type { Unit } from '../measuring/units';
import { finestMeasure } from '../measuring/kitchenMeasure';

/** Steps that people measure in, the finest first, by the unit that `measure` counts them in. */
export const CARD_STEPS: Readonly<Record<string, readonly number[]>> = {
  tsp: [0.25, 1, 3],
  'imp fl oz': [0.25, 0.5, 1],
  mL: [1, 5, 10, 25],
  oz: [0.25, 0.5, 1],
  g: [1, 5, 10, 25],
};

/** A step is coarse enough for amounts of this many steps and more: half of it is then 1 % at most. */
export const STEPS_IN_AMOUNT = 50;

/**
 * The step to which a card rounds an amount, so that nobody counts quarter teaspoons into a quart: the coarsest one
 * that keeps the error of rounding to the nearest within 1 %, else the finest.
 *
 * Source: a choice of ours; nothing published.
 *
 * @param amount in `unit`, > 0
 * @param unit   of volume or mass
 * @returns counted in tsp, imp fl oz, mL, oz or g
 * @throws RangeError for a unit of another family
 * @example cardStep(2, findUnit('cup')!) // 1, a teaspoon of 96
 */
export const cardStep = (amount: number, unit: Unit): number => {
  const { unit: smallest, step: finest } = finestMeasure(unit);
  const exact = convert(amount, unit, smallest);
  return CARD_STEPS[smallest.token]?.findLast((step) => exact >= step * STEPS_IN_AMOUNT) ?? finest;
};
