import type { Litres, LitresPerMinute, Seconds } from '../measuring/quantity';
import { litres, seconds } from '../measuring/quantity';

const SECONDS_PER_MINUTE = 60;
// A ratio this near to a half or a whole is one: units leave noise far below it.
const NOISE = 1e-9;

/**
 * Seconds that a dose takes at a flow, not rounded.
 *
 * Definition: dose ÷ flow.
 *
 * @param dose L, ≥ 0
 * @param flow L/min, > 0
 * @example secondsFor(litres(2.5), litresPerMinute(10)) // 15 s
 */
export const secondsFor = (dose: Litres, flow: LitresPerMinute): Seconds =>
  seconds((dose / flow) * SECONDS_PER_MINUTE);

/**
 * The count to keep at a plant.
 *
 * Definition: dose ÷ flow to the nearest multiple of the step, a tie upwards, never 0.
 *
 * @param dose L, > 0
 * @param flow L/min, > 0
 * @param step s, > 0
 * @returns s; within half a step of the exact time, or one step where that is less than half a step
 * @example countFor(litres(2.6), litresPerMinute(10), seconds(1)) // 16 s
 */
export const countFor = (dose: Litres, flow: LitresPerMinute, step: Seconds): Seconds => {
  const steps = secondsFor(dose, flow) / step;
  return seconds(Math.max(1, Math.floor(steps + 0.5 + NOISE)) * step);
};

/**
 * What a count gives.
 *
 * Definition: count × flow.
 *
 * @param count s, ≥ 0
 * @param flow  L/min, ≥ 0
 * @example doseFrom(seconds(15), litresPerMinute(10)) // 2.5 L
 */
export const doseFrom = (count: Seconds, flow: LitresPerMinute): Litres =>
  litres((count * flow) / SECONDS_PER_MINUTE);

/**
 * Solution for groups of plants.
 *
 * Definition: Σ plants × dose.
 *
 * @param plants in each group, ≥ 0
 * @param doses  for one plant of each group, L, ≥ 0, in the same order
 * @throws RangeError where the two lists differ in length
 * @example need([10, 4], [litres(4), litres(2)]) // 48 L
 */
export const need = (plants: readonly number[], doses: readonly Litres[]): Litres => {
  if (plants.length !== doses.length) {
    throw new RangeError(`${plants.length} groups of plants have ${doses.length} doses.`);
  }
  return litres(plants.reduce((total, count, group) => total + count * doses[group]!, 0));
};

/**
 * Whole plants that a volume feeds.
 *
 * Definition: volume ÷ dose, rounded down.
 *
 * @param volume L, ≥ 0
 * @param dose   for one plant, L, > 0
 * @example serves(litres(227.1), litres(4)) // 56
 */
export const serves = (volume: Litres, dose: Litres): number => {
  const ratio = volume / dose;
  return Math.floor(ratio + NOISE * ratio);
};
