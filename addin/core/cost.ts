import { shareOf } from './measuring/amounts';
import type { Amount, Density } from './measuring/quantity';

/**
 * Price of an amount of product, in the currency of `price`.
 *
 * Definition: price × amount ÷ pack.
 *
 * @param amount  product used, ≥ 0
 * @param price   of the whole pack, ≥ 0
 * @param pack    what the pack holds, > 0
 * @param density of the product as measured, g/mL, > 0; needed where one is a volume and the other a mass
 * @returns undefined where the density is needed and missing
 * @example cost(ofMass(grams(50)), 24, ofMass(grams(1000))) // 1.2
 */
export const cost = (amount: Amount, price: number, pack: Amount, density?: Density): number | undefined => {
  const share = shareOf(amount, pack, density);
  return share === undefined ? undefined : price * share;
};

/**
 * Price of one measure out of a pack, such as of one pound.
 *
 * Definition: price × measure ÷ pack.
 *
 * @param price   of the whole pack, ≥ 0
 * @param pack    what the pack holds, > 0
 * @param per     the one measure, > 0
 * @param density of the product as measured, g/mL, > 0; needed where one is a volume and the other a mass
 * @returns undefined where the density is needed and missing
 * @example unitCost(24, ofMass(grams(1000)), toAmount(1, findUnit('oz')!)) // 0.68
 */
export const unitCost = (price: number, pack: Amount, per: Amount, density?: Density): number | undefined =>
  cost(per, price, pack, density);
