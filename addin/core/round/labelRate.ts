import { shareOf } from '../measuring/amounts';
import type { Density, Rate } from '../measuring/quantity';
import type { MixProduct } from './round';

// A rate typed in one unit and its label's in another differ by rounding of the last digit only.
const NOISE = 1e-9;

/**
 * Whether a rate passes a label's greatest one; equal rates do not.
 *
 * Definition: rate ÷ greatest rate, by one kind, above 1 by more than a last digit.
 *
 * @param density of the product as measured, g/mL, > 0; needed where one rate is by volume and the other by mass
 * @returns undefined where the density is needed and missing
 * @example passesRate(ofMass(grams(2)), ofMass(grams(1.5))) // true
 */
export const passesRate = (rate: Rate, greatest: Rate, density?: Density): boolean | undefined => {
  const times = shareOf(rate, greatest, density);
  return times === undefined ? undefined : times > 1 + NOISE;
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
