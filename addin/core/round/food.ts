import { massOf } from '../measuring/amounts';
import { litres, milligramsPerLitre } from '../measuring/quantity';
import type { MilligramsPerLitre } from '../measuring/quantity';
import { ELEMENT_SHARE } from '../nutrients/oxides';
import { perPlant, ppmOf } from '../nutrients/ppm';
import type { Analysis, Count, FoodPerPlant, MixProduct } from './round';

const STATED = ['N', 'P2O5', 'K2O', 'Fe'] as const satisfies readonly (keyof Analysis)[];
type Nutrient = Exclude<keyof FoodPerPlant, 'sizeClass'>;

/** Strength of a feed, mg/L of each nutrient that is known. */
export type FeedStrength = { readonly [nutrient in Nutrient]?: MilligramsPerLitre };

const LITRE = litres(1);

const stated = (mix: readonly MixProduct[], nutrient: (typeof STATED)[number]): number | undefined => {
  let total: number | undefined;
  for (const { rate, density, analysis } of mix) {
    const share = analysis[nutrient];
    if (share === undefined) continue;
    const mass = massOf(rate, density);
    if (mass === undefined) return undefined;
    total = (total ?? 0) + ppmOf(mass, share, LITRE);
  }
  return total;
};

/**
 * Nutrients in a litre of the finished feed, as labels state them and P and K as elements too.
 *
 * Definition: Σ rate (g/L) × share × 1000. Source of the elements' shares: `ELEMENT_SHARE`.
 *
 * @returns mg/L (ppm); a nutrient is left out where no product states it, or where one that does is measured by
 *   volume and has no density
 * @example 1 g/L of 20-20-20: N 200, P2O5 200, K2O 200, P 87.3, K 166
 */
export const feedStrength = (mix: readonly MixProduct[]): FeedStrength => {
  const strength: { [nutrient in Nutrient]?: MilligramsPerLitre } = {};
  for (const nutrient of STATED) {
    const ppm = stated(mix, nutrient);
    if (ppm === undefined) continue;
    strength[nutrient] = milligramsPerLitre(ppm);
    if (nutrient !== 'P2O5' && nutrient !== 'K2O') continue;
    const element = nutrient === 'P2O5' ? 'P' : 'K';
    strength[element] = milligramsPerLitre(ppm * ELEMENT_SHARE[nutrient].share);
  }
  return strength;
};

/**
 * What one plant of each size class gets at the count really kept, mg of each nutrient that is known.
 *
 * Definition: `feedStrength` × the solution given.
 *
 * @param mix    rates for each litre of finished solution
 * @param counts with the solution that each really gives, L
 * @example 1 g/L of 20-20-20 and 3.785 L given: N 757 mg
 */
export const foodPerPlant = (
  mix: readonly MixProduct[],
  counts: readonly Count[],
): readonly FoodPerPlant[] => {
  const strength = Object.entries(feedStrength(mix));
  return counts.map(({ sizeClass, given }) => ({
    sizeClass,
    ...Object.fromEntries(strength.map(([nutrient, ppm]) => [nutrient, perPlant(ppm, given)])),
  }));
};
