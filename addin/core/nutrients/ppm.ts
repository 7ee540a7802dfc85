import type { Grams, Litres, MilligramsPerLitre } from '../measuring/quantity';
import { grams, milligramsPerLitre } from '../measuring/quantity';

const MG_PER_G = 1000;

/**
 * Nutrient that a mass of product gives to a volume of finished solution; 1 mg/L of a dilute feed is 1 ppm.
 *
 * Definition: ppm = g/L × 1000 × share.
 *
 * @param mass   product, g, ≥ 0
 * @param share  of the nutrient in the product by mass, 0 to 1
 * @param volume finished solution, L, > 0
 * @example ppmOf(grams(100), 0.2, litres(100)) // 200 mg/L
 */
export const ppmOf = (mass: Grams, share: number, volume: Litres): MilligramsPerLitre =>
  milligramsPerLitre((mass * MG_PER_G * share) / volume);

/**
 * Product for so many ppm of a nutrient.
 *
 * Definition: g/L = ppm ÷ (1000 × share). Extension tables are built on 13½ oz per 100 gal for 200 ppm from 20 %,
 * 1.1 % more than this.
 *
 * @param ppm    nutrient wanted, mg/L, ≥ 0
 * @param share  of the nutrient in the product by mass, above 0, to 1
 * @param volume finished solution, L, ≥ 0
 * @example massForPpm(milligramsPerLitre(200), 0.2, litres(100)) // 100 g
 */
export const massForPpm = (ppm: MilligramsPerLitre, share: number, volume: Litres): Grams =>
  grams((ppm * volume) / (MG_PER_G * share));

/**
 * Milligrams of a nutrient that one plant gets.
 *
 * Definition: ppm × dose.
 *
 * @param ppm  of the feed, mg/L, ≥ 0
 * @param dose finished solution for one plant, L, ≥ 0
 * @example perPlant(milligramsPerLitre(200), litres(3.785411784)) // 757.0823568
 */
export const perPlant = (ppm: MilligramsPerLitre, dose: Litres): number => ppm * dose;
