import type { Grams, Litres } from '../measuring/quantity';
import { grams } from '../measuring/quantity';

// 998.2 kg/m³ at 20 °C: MWH, Water Treatment, 3rd ed. (2012), Appendix C.
const WATER_GRAMS_PER_LITRE = 998.2;

/**
 * Mass of water at 20 °C. A dilute feed weighs a few parts in a thousand more.
 *
 * Source: MWH, Water Treatment, 3rd ed. (2012), Appendix C: 998.2 kg/m³.
 *
 * @param volume L, ≥ 0
 * @example waterMass(litres(100)) // 99 820 g
 */
export const waterMass = (volume: Litres): Grams => grams(volume * WATER_GRAMS_PER_LITRE);

/**
 * Weight of a filled barrel, its liquid taken as water at 20 °C.
 *
 * Source: as `waterMass`.
 *
 * @param volume of the liquid, L, ≥ 0
 * @param empty  barrel with the pump in it and nothing else, g, ≥ 0; 0 where left out
 * @example filledWeight(litres(100), grams(8000)) // 107 820 g
 */
export const filledWeight = (volume: Litres, empty: Grams = grams(0)): Grams =>
  grams(waterMass(volume) + empty);
