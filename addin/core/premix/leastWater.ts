import type { Grams, Litres } from '../measuring/quantity';
import { litres } from '../measuring/quantity';

/** Share of saturation that a bucket is loaded to; our choice, so that the last grains still dissolve. */
export const SATURATION_MARGIN = 0.8;

/**
 * Least water that dissolves a powder.
 *
 * Definition: mass ÷ (solubility × margin). Solubility is that of the powder alone at the water's temperature after
 * dissolving: most nitrates and urea cool the water, and salts that share an ion dissolve less together.
 *
 * @param mass       powder, g, ≥ 0
 * @param solubility grams that dissolve in a litre of water, > 0
 * @param margin     share of saturation allowed, above 0, to 1
 * @returns water, L
 * @example leastWater(grams(800), 200) // 5 L
 */
export const leastWater = (mass: Grams, solubility: number, margin: number = SATURATION_MARGIN): Litres =>
  litres(mass / (solubility * margin));
