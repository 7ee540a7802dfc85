import type { KitchenMeasure } from './kitchenMeasure';
import { MOST_STEPS, finestMeasure, toldIn } from './kitchenMeasure';
import type { Unit } from './units';
import { convert } from './units';

/** Steps that people measure in, the finest first, by the unit that `finestMeasure` counts in. */
const STEPS: Readonly<Record<string, readonly number[]>> = {
  tsp: [0.25, 1, 3],
  'imp fl oz': [0.25, 0.5, 1],
  mL: [1, 5, 10, 25],
  oz: [0.25, 0.5, 1],
  g: [1, 5, 10, 25],
};

/** A step is coarse enough for amounts of this many steps and more: half of it is then 1 % at most. */
const STEPS_IN_AMOUNT = 50;
const FEW = 2;
/** Nobody measures a third time for less than this share of the amount. */
const WORTH_A_THIRD = 0.02;
// A limit worked out in another unit differs in its last digits; so does an amount.
const NOISE = 1e-9;

/**
 * The step to which an amount is rounded, so that nobody counts quarter teaspoons into a quart: the coarsest one that
 * keeps the error of rounding to the nearest within 1 %, else the finest.
 *
 * Source: a choice of ours; nothing published.
 *
 * @param amount in `unit`, > 0
 * @param unit   of volume or mass
 * @returns counted in tsp, imp fl oz, mL, oz or g
 * @throws RangeError for a unit of another family
 * @example suitingStep(2, findUnit('cup')!) // 1, a teaspoon of 96
 */
export const suitingStep = (amount: number, unit: Unit): number => {
  const { unit: smallest, step: finest } = finestMeasure(unit);
  const exact = convert(amount, unit, smallest);
  return STEPS[smallest.token]?.findLast((step) => exact >= step * STEPS_IN_AMOUNT) ?? finest;
};

/** Whole steps in the order of their distance from the nearest, which is some part of a step off. */
function* around(nearest: number, target: number, most: number): Generator<number> {
  yield nearest;
  const side = target >= nearest ? 1 : -1;
  for (let away = 1; away <= most; away += 1) yield* [nearest + side * away, nearest - side * away];
}

/**
 * The nearest amount that at most two measures which people own hold, such as 3 1/2 cups 3 tbsp; three measures only
 * where two would be off by more than 2 %. To a step that suits the amount (`suitingStep`), and below `most` always.
 *
 * Source: NIST Handbook 44, Appendix C, for the measures; which of them people own, and how many they care to use, is
 * common practice.
 *
 * @param amount in `unit`, > 0
 * @param unit   of volume or mass; its system chooses the measures
 * @param most   in `unit`, what must not be passed, such as a label's greatest rate; nothing where left out
 * @returns undefined under half of the finest measure, and where nothing measurable is within `most`
 * @throws RangeError for a unit of another family, or an amount above 10⁹ of the finest measure
 * @example measurable(3.43, findUnit('cup')!)?.words // '3 1/4 cups 3 tbsp'
 */
export const measurable = (amount: number, unit: Unit, most = Infinity): KitchenMeasure | undefined => {
  const { unit: smallest } = finestMeasure(unit);
  const wanted = Math.min(amount, most);
  const step = suitingStep(wanted, unit);
  const target = convert(wanted, unit, smallest) / step;
  if (!(target <= MOST_STEPS)) {
    throw new RangeError(
      `The amount is ${amount} ${unit.token}, more than ${MOST_STEPS} of the finest measure.`,
    );
  }
  const limit = Math.floor((convert(most, unit, smallest) / step) * (1 + NOISE));
  const nearest = Math.min(Math.floor(target + 0.5 + NOISE * Math.max(1, target)), limit);
  if (nearest < 1) return undefined;
  const near = Math.floor(target * WORTH_A_THIRD) + 1;
  let steps = nearest;
  for (const tried of around(nearest, target, near)) {
    const apart = Math.abs(tried - target) > target * WORTH_A_THIRD;
    if (tried < 1 || tried > limit || (apart && tried !== nearest)) continue;
    if (toldIn(tried * step, unit).length > FEW) continue;
    steps = tried;
    break;
  }
  const measured = Math.min(convert(steps * step, smallest, unit), steps === limit ? most : Infinity);
  return { words: toldIn(steps * step, unit).join(' '), measured, error: measured / amount - 1 };
};
