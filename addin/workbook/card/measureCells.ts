import { PARTS_WANTED, STOCKS, findUnit, finestMeasure, WATER_PARTS } from '../../core';
import type { PageCell } from '../page';
import type { CardContext, MeasureColumn } from './cardContext';
import { MEASURE_COLUMNS, measureIndex, place, workings } from './cardContext';
import { cell, cells, formula, quoted } from './cardFormulas';
import type { CardProduct } from './cardLayout';

/** The same noise as the core allows a limit that was worked out in another unit. */
const NOISE = '*(1+1E-9)';

const stepOf = (token: string): number => finestMeasure(findUnit(token)!).step;

/** True where nothing that people own measures the amount within what is allowed. */
const tooLittle = (amount: string, most: string, unit: string): string =>
  `OR(${amount}${NOISE}<${stepOf(unit) / 2},AND(${most}>0,${most}${NOISE}<${stepOf(unit)}))`;

/** One of the stock's waters for each number of times that it makes the product more. */
const byWater = (
  { unit }: CardProduct,
  test: (times: number) => string,
  answer: (water: { said: string; times: number }) => string,
): string => {
  const { waters, product } = STOCKS[unit]!;
  const all = waters.map(({ said, holds }) => ({ said, times: holds / product }));
  return all
    .slice(0, -1)
    .reduceRight((other, water) => `IF(${test(water.times)},${answer(water)},${other})`, answer(all.at(-1)!));
};

/** How the planner's measure of one product for one fill is reached, step by step. */
const measureFormulas = (
  context: CardContext,
  at: number,
  index: number,
  makeUp: string,
): Record<MeasureColumn, string> => {
  const one = context.request.products[index]!;
  const { product, measure, says } = workings(context);
  const of = (what: MeasureColumn) => measure(at, what);
  const [exact, most, times, part] = [of('exact'), of('most'), of('times'), of('part')];
  const unit = quoted(one.unit);
  const stock = STOCKS[one.unit]!;
  const partUnit = quoted(stock.partUnit);
  const least = PARTS_WANTED * stepOf(stock.partUnit);
  const off = `ABS(${of('measured')}/${exact}-1)`;
  const inStock = `": ${stock.said} in "&${of('water')}&" of water, "&FEED.MEASURE(${part},${partUnit})&" of that"`;
  return {
    product: String(index + 1),
    // The product's own fault is looked at here too: what hangs on one cell alone is lost with it.
    exact: `IF(OR(${says}<>"",${product(index, 'fault')}<>"",${makeUp}=0),0,${makeUp}*${product(index, 'each')})`,
    most: `IF(${exact}=0,0,IF(${product(index, 'greatestEach')}>0,MAX(${exact},${makeUp}*${product(index, 'greatestEach')}),0))`,
    direct: `IF(${exact}=0,0,IF(${tooLittle(exact, most, one.unit)},0,FEED.MEASURABLE(${exact},${unit},${most})))`,
    times: `IF(OR(${exact}=0,${of('direct')}>0),0,${byWater(
      one,
      (much) => `${exact}*${much}>=${least}`,
      (water) => String(water.times),
    )})`,
    water: `IF(${times}=0,"",${byWater(
      one,
      (much) => `${times}=${much}`,
      (water) => quoted(water.said),
    )})`,
    part:
      `IF(${times}=0,0,IF(${tooLittle(`${exact}*${times}`, `${most}*${times}`, stock.partUnit)},0,` +
      `FEED.MEASURABLE(${exact}*${times},${partUnit},${most}*${times})))`,
    measured: `IF(${times}>0,${part}/${times},${of('direct')})`,
    said:
      `IF(${exact}=0,"",IF(${times}=0,FEED.MEASURE(${of('measured')},${unit}),` +
      `"too little to measure"&IF(${part}=0,"",${inStock})))`,
    off:
      `IF(${exact}=0,"",IF(${times}>0,"",IF(${off}<0.005,"",` +
      `"("&IF(${of('measured')}>${exact},"+","-")&ROUND(${off}*100,1)&"\u00a0%)")))`,
  };
};

const HEADS: Readonly<Record<MeasureColumn, string>> = {
  product: 'Product',
  exact: 'Exact',
  most: 'At most',
  direct: 'Measurable',
  times: 'Parts of a stock',
  water: 'Water of the stock',
  part: 'Part of it',
  measured: 'Measured',
  said: 'In words',
  off: 'Off',
};

export const measureHeads = (context: CardContext): PageCell[] => {
  const { work } = workings(context);
  if (context.request.products.length === 0) return [];
  const { row, column } = work.measure(0, 'product');
  return MEASURE_COLUMNS.map((of, at) => place(row - 1, column + at, HEADS[of], 'header'));
};

/** A product of one fill: the measure in words, or what stands in its place, and in the workings how it is reached. */
export const measureCells = (context: CardContext, index: number, row: number, fill: number): PageCell[] => {
  const { layout } = context;
  const { work, product, measure, says } = workings(context);
  const at = measureIndex(context, fill, index);
  const texts = measureFormulas(context, at, index, cell(row, layout.column.makeUp));
  const off = measure(at, 'off');
  const told = `${measure(at, 'said')}&IF(${off}="",""," "&${off})`;
  // One line of the large print: Calc makes no row higher that a change elsewhere fills.
  const shown = `IF(OR(${says}<>"",${product(index, 'fault')}<>""),"make again",${told})`;
  return [
    { ...place(row, layout.column.firstProduct + index, formula(shown), 'big'), wrap: true },
    ...MEASURE_COLUMNS.map((of) => {
      const { row: line, column } = work.measure(at, of);
      const input = of === 'product' ? index + 1 : formula(texts[of]);
      return place(line, column, input, 'computed', '0.0##');
    }),
  ];
};

/** Least hot water for the powders of one fill, rounded up as the core does. */
export const hotWater = (context: CardContext, row: number): string => {
  const { request, layout } = context;
  const { work, says } = workings(context);
  const count = request.products.length;
  const first = work.product(0, 'hotEach');
  const each = cells(first.row, first.column, first.row + count - 1, first.column);
  const makeUp = cell(row, layout.column.makeUp);
  const parts = WATER_PARTS;
  const water = `ROUNDUP(${makeUp}*SUM(${each})*${parts}-1E-9,0)/${parts}&${quoted(` ${request.hotWaterUnit}`)}`;
  return `IF(OR(${says}<>"",${makeUp}=0),"",IF(COUNT(${each})=${count},${water},"see label"))`;
};
