import { shareOf } from '../measuring/amounts';
import type { Density, Rate } from '../measuring/quantity';
import type { MixProduct } from './round';

// A rate typed in one unit and its label's in another differ by rounding of the last digit only.
const NOISE = 1e-9;

/**
 * A rate as a share of a label's greatest one.
 *
 * Definition: rate ÷ greatest rate, by one kind; a share that differs from 1 by the last digits alone is 1.
 *
 * @param greatest > 0
 * @param density  of the product as measured, g/mL, > 0; needed where one rate is by volume and the other by mass
 * @returns undefined where the density is needed and missing
 * @example labelShare(ofMass(grams(3)), ofMass(grams(1.5))) // 2
 */
export const labelShare = (rate: Rate, greatest: Rate, density?: Density): number | undefined => {
  const share = shareOf(rate, greatest, density);
  return share !== undefined && Math.abs(share - 1) <= NOISE ? 1 : share;
};

/**
 * Whether a rate passes a label's greatest one; equal rates do not.
 *
 * Definition: `labelShare` above 1.
 *
 * @param density as for `labelShare`
 * @returns undefined where the density is needed and missing
 * @example passesRate(ofMass(grams(2)), ofMass(grams(1.5))) // true
 */
export const passesRate = (rate: Rate, greatest: Rate, density?: Density): boolean | undefined => {
  const share = labelShare(rate, greatest, density);
  return share === undefined ? undefined : share > 1;
};

/**
 * The products of a mix that are planned above their label's greatest rate.
 *
 * Definition: those whose rate passes it by `passesRate`; one without a greatest rate, or without a density that the
 * two rates need, is not among them.
 *
 * @example a mix at 2 g/L of a product whose label stops at 1.5 g/L: that product
 */
export const overLabel = (mix: readonly MixProduct[]): readonly MixProduct[] =>
  mix.filter(
    ({ rate, greatestRate, density }) =>
      greatestRate !== undefined && passesRate(rate, greatestRate, density) === true,
  );
