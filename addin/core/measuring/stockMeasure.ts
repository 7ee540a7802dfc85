import { finestMeasure } from './kitchenMeasure';
import { measurable } from './measurable';
import type { Unit } from './units';
import { convert, findUnit } from './units';

/** A stock that makes a little product measurable: so much of it in so much water, of which a part is used. */
interface Stock {
  /** Product that goes into the water, in the unit that `finestMeasure` counts in. */
  readonly product: number;
  /** What the part that is used is measured in. */
  readonly partUnit: string;
  /** Water to choose from, the least first. */
  readonly waters: readonly Water[];
}

interface Water {
  readonly amount: number;
  readonly unit: string;
  /** The same in the part's unit. */
  readonly holds: number;
}

const US_WATERS = [
  { amount: 1, unit: 'qt', holds: 192 },
  { amount: 1, unit: 'gal', holds: 768 },
  { amount: 5, unit: 'gal', holds: 3840 },
];
const METRIC_WATERS = [
  { amount: 1, unit: 'L', holds: 1000 },
  { amount: 10, unit: 'L', holds: 10_000 },
];

/**
 * Stocks by the unit that `finestMeasure` counts in.
 *
 * Source: a choice of ours, round numbers that people own; nothing published.
 */
const STOCKS: Readonly<Record<string, Stock>> = {
  tsp: { product: 1, partUnit: 'tsp', waters: US_WATERS },
  oz: { product: 1, partUnit: 'tsp', waters: US_WATERS },
  'imp fl oz': {
    product: 1,
    partUnit: 'imp fl oz',
    waters: [
      { amount: 1, unit: 'imp gal', holds: 160 },
      { amount: 5, unit: 'imp gal', holds: 800 },
    ],
  },
  mL: { product: 5, partUnit: 'mL', waters: METRIC_WATERS },
  g: { product: 5, partUnit: 'mL', waters: METRIC_WATERS },
};

/** So many of the finest measure are wanted of a part: half of one is then 2 % at most. */
const PARTS_WANTED = 25;

/** A part of a stock, and the product in it. */
export interface StockMeasure {
  /** '1 tsp in 1 qt of water, 2 tbsp of that'. */
  readonly words: string;
  /** Product in the part, in the unit of the amount. */
  readonly measured: number;
  /** Product that goes into the water. */
  readonly product: { readonly amount: number; readonly unit: Unit };
  readonly water: { readonly amount: number; readonly unit: Unit };
  /** The part: as reckoned, and as it is measured. */
  readonly part: {
    readonly exact: number;
    readonly words: string;
    readonly measured: number;
    readonly unit: Unit;
  };
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
  const { product, partUnit, waters } = STOCKS[smallest.token]!;
  const part = findUnit(partUnit)!;
  const least = PARTS_WANTED * finestMeasure(part).step;
  const wanted = convert(Math.min(amount, most), unit, smallest);
  const water = waters.find(({ holds }) => (wanted * holds) / product >= least) ?? waters.at(-1)!;
  const times = water.holds / product;
  const exact = wanted * times;
  const used = measurable(exact, part, convert(most, unit, smallest) * times);
  if (used === undefined) return undefined;
  const { words, measured } = used;
  return {
    words: `${product} ${smallest.token} in ${water.amount} ${water.unit} of water, ${words} of that`,
    measured: convert(measured / times, smallest, unit),
    product: { amount: product, unit: smallest },
    water: { amount: water.amount, unit: findUnit(water.unit)! },
    part: { exact, words, measured, unit: part },
  };
};
