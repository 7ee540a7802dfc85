import { countFor, doseFrom } from '../flow/counts';
import type { Count, RoundInput } from './round';

/**
 * How long the wand is held on a plant of each size class that has plants, in the order of the doses.
 *
 * The count is the nearest multiple of the step, never 0, so `given` is within flow × step ÷ 2 of the dose, or is
 * what one step gives where the dose takes less than half a step.
 *
 * @param input checked by `refusalOf`
 * @example a dose of 2.65 L at 10 L/min and whole seconds: count 16 s, given 2.667 L, error +0.0063
 */
export const sizeCounts = (input: RoundInput): readonly Count[] => {
  const { flow, countStep } = input.rig;
  const plants = new Map<string, number>();
  for (const group of input.groups) {
    plants.set(group.sizeClass, (plants.get(group.sizeClass) ?? 0) + group.plants);
  }
  return input.doses.flatMap(({ sizeClass, dose }) => {
    const many = plants.get(sizeClass) ?? 0;
    if (many === 0) return [];
    const count = countFor(dose, flow, countStep);
    const given = doseFrom(count, flow);
    return [{ sizeClass, plants: many, dose, count, given, error: given / dose - 1 }];
  });
};
