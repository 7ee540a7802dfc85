import { finestMeasure } from './kitchenMeasure';
import { measurable } from './measurable';
import type { Unit } from './units';
import { convert, findUnit } from './units';

/** A stock that makes a little product measurable: so much of it in so much water, of which a part is used. */
export interface Stock {
  /** Product that goes into the water, in the unit that `finestMeasure` counts in. */
  readonly product: number;
  /** The same as it is said: '1 tsp'. */
  readonly said: string;
  /** What the part that is used is measured in. */
  readonly partUnit: string;
  /** Water to choose from, the least first: as it is said, and in `partUnit`. */
  readonly waters: readonly { readonly said: string; readonly holds: number }[];
}

const US_WATERS = [
  { said: '1 qt', holds: 192 },
  { said: '1 gal', holds: 768 },
  { said: '5 gal', holds: 3840 },
];
const METRIC_WATERS = [
  { said: '1 L', holds: 1000 },
  { said: '10 L', holds: 10_000 },
];

/**
 * Stocks by the unit that `finestMeasure` counts in.
 *
 * Source: a choice of ours, round numbers that people own; nothing published.
 */
export const STOCKS: Readonly<Record<string, Stock>> = {
  tsp: { product: 1, said: '1 tsp', partUnit: 'tsp', waters: US_WATERS },
  oz: { product: 1, said: '1 oz', partUnit: 'tsp', waters: US_WATERS },
  'imp fl oz': {
    product: 1,
    said: '1 imp fl oz',
    partUnit: 'imp fl oz',
    waters: [
      { said: '1 imp gal', holds: 160 },
      { said: '5 imp gal', holds: 800 },
    ],
  },
  mL: { product: 5, said: '5 mL', partUnit: 'mL', waters: METRIC_WATERS },
  g: { product: 5, said: '5 g', partUnit: 'mL', waters: METRIC_WATERS },
};

/** So many of the finest measure are wanted of a part: half of one is then 2 % at most. */
export const PARTS_WANTED = 25;

/** A part of a stock, and the product in it. */
export interface StockMeasure {
  /** '1 tsp in 1 qt of water, 2 tbsp of that'. */
  readonly words: string;
  /** Product in the part, in the unit of the amount. */
  readonly measured: number;
}

/**
 * How to measure an amount that is too little to measure by itself: a stock, and a part of it.
 *
 * Definition: part = amount × water ÷ product of the stock. The product adds to the water's volume, so that the part holds a
 * little less than that, never more.
 *
 * @param amount in `unit`, > 0
 * @param unit   of volume or mass
 * @param most   in `unit`; never passed
 * @returns undefined where even a part of the weakest stock is too little to measure
 * @throws RangeError for a unit of another family
 * @example stockMeasure(0.0625, findUnit('tsp')!)?.words // '1 tsp in 1 qt of water, 1/4 cup of that'
 */
export const stockMeasure = (amount: number, unit: Unit, most = Infinity): StockMeasure | undefined => {
  const { unit: smallest } = finestMeasure(unit);
  const { product, said, partUnit, waters } = STOCKS[smallest.token]!;
  const part = findUnit(partUnit)!;
  const least = PARTS_WANTED * finestMeasure(part).step;
  const exact = convert(amount, unit, smallest);
  const water = waters.find(({ holds }) => (exact * holds) / product >= least) ?? waters.at(-1)!;
  const times = water.holds / product;
  const used = measurable(exact * times, part, convert(most, unit, smallest) * times);
  if (used === undefined) return undefined;
  return {
    words: `${said} in ${water.said} of water, ${used.words} of that`,
    measured: convert(used.measured / times, smallest, unit),
  };
};
