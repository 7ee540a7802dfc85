import { CARD_STEPS, STEPS_IN_AMOUNT } from '../../core';
import type { PageCell } from '../page';
import type { CardContext } from './cardContext';
import { place, workingsAt } from './cardContext';
import { MEASURED_IN, cell, formula, ofMix, ofProduct, quoted } from './cardFormulas';
import type { CardProduct, StationRows } from './cardLayout';

/** The core's `cardStep` as a formula. */
const stepFor = (exact: string, unit: string): string => {
  const [finest, ...coarser] = CARD_STEPS[unit]!;
  return coarser.reduce(
    (finer, step) => `IF(${exact}>=${step * STEPS_IN_AMOUNT},${step},${finer})`,
    String(finest),
  );
};

/** The core's `cardMeasure` as a formula: the nearest measure, or the next below where the nearest would pass the label. */
const measuredAmount = (exact: string, greatest: string, step: string): string => {
  const nearest = `INT(${exact}/${step}+0.5+1E-9)*${step}`;
  const most = `MAX(${exact},${greatest})*(1+1E-9)`;
  return `IF(AND(${greatest}>0,${nearest}>${most}),INT(${exact}/${step}+1E-9)*${step},${nearest})`;
};

const greatestFor = ({ sources }: CardContext, product: string, makeUp: string, unit: string): string => {
  const rate = ofProduct(sources, product, 'greatestRate');
  const rateUnit = ofProduct(sources, product, 'greatestRateUnit');
  const density = ofProduct(sources, product, 'density');
  return (
    `IF(N(${rate})>0,FEED.DILUTE(${rate},${rateUnit},${makeUp},${sources.rig.barrel.unit},` +
    `${quoted(unit)},${density}),0)`
  );
};

const words = (measured: string, exact: string, unit: string): string => {
  const error = `(${measured}/${exact}-1)`;
  const told = `IF(ABS(${error})<0.005,""," ("&IF(${error}>0,"+","-")&ROUND(ABS(${error})*100,1)&"\u00a0%)")`;
  return (
    `IF(${exact}=0,"",IF(${measured}=0,ROUND(${exact},3)&" "&${quoted(unit)},` +
    `FEED.MEASURE(${measured},${quoted(unit)})&${told}))`
  );
};

/** A product of one fill: the measure in words, and in the workings what it comes from. */
export const measureCells = (
  context: CardContext,
  product: CardProduct,
  index: number,
  rows: StationRows,
  row: number,
): PageCell[] => {
  const { sources, layout } = context;
  const unit = MEASURED_IN[product.way];
  const header = cell(rows.fillHeader, layout.column.firstProduct + index);
  const makeUp = cell(row, layout.column.makeUp);
  const at = workingsAt(layout.column.workings).productColumns + 3 * index;
  const [exact, greatest, measured] = [cell(row, at), cell(row, at + 1), cell(row, at + 2)];
  const dilute =
    `IF(${makeUp}>0,FEED.DILUTE(${ofMix(sources, header, 'rate')},${ofMix(sources, header, 'rateUnit')},${makeUp},` +
    `${sources.rig.barrel.unit},${quoted(unit)},${ofProduct(sources, header, 'density')}),0)`;
  return [
    {
      ...place(row, layout.column.firstProduct + index, formula(words(measured, exact, unit)), 'big'),
      wrap: true,
    },
    place(row, at, formula(dilute), 'computed', '0.0##'),
    place(
      row,
      at + 1,
      formula(`IF(${makeUp}>0,${greatestFor(context, header, makeUp, unit)},0)`),
      'computed',
      '0.0##',
    ),
    place(
      row,
      at + 2,
      formula(measuredAmount(exact, greatest, `(${stepFor(exact, unit)})`)),
      'computed',
      '0.0##',
    ),
  ];
};

/** Least hot water for the powders of one fill, rounded up to a quarter. */
export const hotWater = (
  { sources, request, layout }: CardContext,
  rows: StationRows,
  row: number,
): string => {
  const at = workingsAt(layout.column.workings).productColumns;
  const shares = request.products.flatMap(({ powder, way }, index) => {
    if (!powder) return [];
    const header = cell(rows.fillHeader, layout.column.firstProduct + index);
    const solubility = ofProduct(sources, header, 'solubility');
    const density = ofProduct(sources, header, 'density');
    const unit = quoted(MEASURED_IN[way]);
    return [
      `IF(N(${solubility})>0,FEED.PREMIX(${cell(row, at + 3 * index)},${unit},${solubility},` +
        `${quoted(request.hotWaterUnit)},0,${density}),NA())`,
    ];
  });
  const total = `ROUNDUP((${shares.join('+')})*4,0)/4&" "&${quoted(request.hotWaterUnit)}`;
  return `IF(${cell(row, layout.column.makeUp)}=0,"",IFERROR(${total},"see label"))`;
};
