import { WATER_PARTS } from '../../core';
import type { PageCell } from '../page';
import type { CardContext, MeasureColumn } from './cardContext';
import { MEASURE_COLUMNS, MEASURE_HEADS, measureIndex, place, workings } from './cardContext';
import { cell, cells, formula, quoted } from './cardFormulas';

/** How the planner's measure of one product for one fill is reached, step by step. */
const measureFormulas = (
  context: CardContext,
  at: number,
  index: number,
  makeUp: string,
): Record<Exclude<MeasureColumn, 'product'>, string> => {
  const { product, measure, says } = workings(context);
  const of = (what: MeasureColumn) => measure(at, what);
  const [exact, greatestEach] = [of('exact'), product(index, 'greatestEach')];
  const measured = `${exact},${quoted(context.request.products[index]!.unit)},${of('most')}`;
  return {
    // The product's own fault is looked at here too: what hangs on one cell alone is lost with it.
    exact: `IF(${says}<>"",0,IF(OR(${product(index, 'fault')}<>"",${makeUp}=0),0,${makeUp}*${product(index, 'each')}))`,
    // A rate above the label, planned with a reason, takes the label's place.
    most: `IF(${exact}=0,0,IF(${greatestEach}>0,MAX(${exact},${makeUp}*${greatestEach}),0))`,
    measured: `FEED.MEASURED(${measured})`,
    said: `IF(${exact}=0,"",FEED.HOWMUCH(${measured}))`,
    off: `IF(OR(${exact}=0,LEFT(${of('said')},3)="too"),0,${of('measured')}/${exact}-1)`,
  };
};

export const measureHeads = (context: CardContext): PageCell[] => {
  const { work } = workings(context);
  if (context.request.products.length === 0) return [];
  const { row, column } = work.measure(0, 'product');
  return MEASURE_COLUMNS.map((of, at) => place(row - 1, column + at, MEASURE_HEADS[of], 'header'));
};

/** A product of one fill: the measure in words, or what stands in its place, and in the workings how it is reached. */
export const measureCells = (context: CardContext, index: number, row: number, fill: number): PageCell[] => {
  const { layout } = context;
  const { work, product, measure, says } = workings(context);
  const at = measureIndex(context, fill, index);
  const texts = measureFormulas(context, at, index, cell(row, layout.column.makeUp));
  const off = measure(at, 'off');
  const told =
    `${measure(at, 'said')}&IF(ABS(${off})<0.005,"",` +
    // A minus that no line is broken after.
    `" ("&IF(${off}>0,"+","\u2212")&ROUND(ABS(${off})*100,1)&"\u00a0%)")`;
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
  return `IF(${says}<>"","",IF(${makeUp}=0,"",IF(COUNT(${each})=${count},${water},"see label")))`;
};
