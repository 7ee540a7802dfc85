import { shareOf } from '../measuring/amounts';
import type { Density, Rate } from '../measuring/quantity';
import type { MixProduct } from './round';

// A rate typed in one unit and its label's in another differ by rounding of the last digit only.
const NOISE = 1e-9;

/**
 * Whether a rate passes a label's greatest one; equal rates do not.
 *
 * @param density of the product as measured, g/mL, > 0; needed where one rate is by volume and the other by mass
 * @returns undefined where the density is needed and missing
 * @example passesRate(ofMass(grams(2)), ofMass(grams(1.5))) // true
 */
export const passesRate = (rate: Rate, greatest: Rate, density?: Density): boolean | undefined => {
  const times = shareOf(rate, greatest, density);
  return times === undefined ? undefined : times > 1 + NOISE;
};

/** The products of a mix that are planned above their label's greatest rate. */
export const overLabel = (mix: readonly MixProduct[]): readonly MixProduct[] =>
  mix.filter(
    ({ rate, greatestRate, density }) =>
      greatestRate !== undefined && passesRate(rate, greatestRate, density) === true,
  );
