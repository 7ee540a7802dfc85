import { amountIn, scaleAmount, toAmount } from './amounts';
import type { Density, Litres, Rate } from './quantity';
import type { Unit } from './units';
import { findUnit, toCanonical } from './units';

/** A label's way of writing a rate: so much of `amount` for every `per` × `volume` of finished solution. */
export interface RateUnit {
  /** Plain spelling, such as 'oz/100 gal'. */
  readonly token: string;
  /** Unit of volume or mass. */
  readonly amount: Unit<'volume' | 'mass'>;
  /** Count before the volume, > 0; 1 where the label has none. */
  readonly per: number;
  /** Unit of volume. */
  readonly volume: Unit<'volume'>;
}

/**
 * The rate unit that a text names: a measure, a slash, an optional count, a volume.
 *
 * Case and spaces do not matter; nothing is guessed.
 *
 * @returns undefined where the measure is unknown or no volume or mass, the volume is unknown, or the count is 0
 *   or more than arithmetic holds
 * @example findRateUnit('OZ / 100 gal')?.token // 'oz/100 gal'
 */
export const findRateUnit = (text: string): RateUnit | undefined => {
  const parts = /^([^/]+)\/\s*(\d+(?:\.\d+)?)?\s*([^\d\s][^/]*)$/.exec(text.trim());
  if (!parts) return undefined;
  const amount = findUnit(parts[1]!, 'volume', 'mass');
  const volume = findUnit(parts[3]!, 'volume');
  const per = Number(parts[2] ?? 1);
  if (amount === undefined || volume === undefined || !(per > 0 && per < Infinity)) return undefined;
  return { token: `${amount.token}/${per === 1 ? '' : `${per} `}${volume.token}`, amount, per, volume };
};

/** Finished solution that one step of the rate stands for. */
const solution = (unit: RateUnit): Litres => toCanonical(unit.per, unit.volume);

/**
 * A label's rate as product for each litre of finished solution.
 *
 * Definition: product ÷ finished solution. Source of the measures: as `toCanonical`.
 *
 * @param value of the rate, ≥ 0
 * @example toRate(1, findRateUnit('tbsp/gal')!) // 0.00390625 L for each L
 */
export const toRate = (value: number, unit: RateUnit): Rate =>
  scaleAmount(toAmount(value, unit.amount), 1 / solution(unit));

/**
 * A rate in a label's unit; undoes `toRate`.
 *
 * Definition: as `toRate`.
 *
 * @param density of the product as measured, g/mL, > 0; needed from volume to mass or back
 * @returns undefined where the density is needed and missing
 * @example fromRate(ofVolume(litres(0.002)), findRateUnit('mL/L')!) // 2
 */
export const fromRate = (rate: Rate, unit: RateUnit, density?: Density): number | undefined =>
  amountIn(scaleAmount(rate, solution(unit)), unit.amount, density);
