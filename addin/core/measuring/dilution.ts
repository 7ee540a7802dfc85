import { scaleAmount } from './amounts';
import type { Amount, Litres, Rate } from './quantity';
import { litres } from './quantity';

/**
 * Product for a volume of finished solution.
 *
 * Definition: rate × finished solution.
 *
 * @param rate   product for each litre of finished solution, ≥ 0
 * @param volume finished solution, L, ≥ 0
 * @example productFor(ofVolume(litres(0.002)), litres(100)) // 0.2 L
 */
export const productFor = (rate: Rate, volume: Litres): Amount => scaleAmount(rate, volume);

/**
 * The rate that was mixed: product for each litre of finished solution.
 *
 * Definition: product ÷ finished solution.
 *
 * @param amount product, ≥ 0
 * @param volume finished solution, L, > 0
 * @example strength(ofMass(grams(100)), litres(50)) // 2 g for each L
 */
export const strength = (amount: Amount, volume: Litres): Rate => scaleAmount(amount, 1 / volume);

/**
 * Concentrate that a proportioner marked 1:`parts` takes up for a volume of finished solution.
 *
 * Print has both conventions. 'in': 1 part in `parts` of finished solution. 'plus': 1 part added to `parts` of water.
 * Source: for 'in', UMass Extension, "Fertilizer Calculations for Greenhouse Crops" (1 gal delivers 100 gal final);
 * for 'plus', a trade source, name withheld (1 gal added to each 100 gal).
 *
 * @param parts    the mark on the proportioner, ≥ 1
 * @param finished finished solution, L, ≥ 0
 * @example concentrate(100, litres(200), 'in') // 2 L
 */
export const concentrate = (parts: number, finished: Litres, convention: 'in' | 'plus'): Litres =>
  litres(finished / (convention === 'in' ? parts : parts + 1));
