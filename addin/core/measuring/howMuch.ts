import { measurable } from './measurable';
import { stockMeasure, type StockMeasure } from './stockMeasure';
import type { Unit } from './units';

/** What a person measures for an amount of product. */
export interface HowMuch {
  /** '3 3/4 cups', or 'too little to measure: 1 tsp in 1 qt of water, 2 tbsp of that'. */
  readonly words: string;
  /** Product that is measured, in the unit of the amount; 0 where it is too little even for a stock. */
  readonly measured: number;
  /** Share by which the measured is over (+) or under (−) the amount. */
  readonly error: number;
  /** True where the product itself is too little to measure. */
  readonly tooLittle: boolean;
  /** Of which a part is used, where one helps. */
  readonly stock?: StockMeasure;
}

const TOO_LITTLE = 'too little to measure';

/**
 * What to measure for an amount, in the measures that people own: the product itself, or where that is too little a part
 * of a stock of it.
 *
 * Definition: `measurable`, else `stockMeasure`; the measures' source is named there.
 *
 * @param amount in `unit`, > 0
 * @param unit   of volume or mass; its system chooses the measures
 * @param most   in `unit`, what must not be passed, such as a label's greatest rate; nothing where left out
 * @throws RangeError for a unit of another family, or an amount above 10⁹ of the finest measure
 * @example howMuch(0.0625, findUnit('tsp')!).words // 'too little to measure: 1 tsp in 1 qt of water, 1/4 cup of that'
 */
export const howMuch = (amount: number, unit: Unit, most = Infinity): HowMuch => {
  const found = measurable(amount, unit, most);
  if (found !== undefined) return { ...found, tooLittle: false };
  const stock = stockMeasure(amount, unit, most);
  const measured = stock?.measured ?? 0;
  const told = { measured, error: measured / amount - 1, tooLittle: true };
  return stock ? { words: `${TOO_LITTLE}: ${stock.words}`, ...told, stock } : { words: TOO_LITTLE, ...told };
};
