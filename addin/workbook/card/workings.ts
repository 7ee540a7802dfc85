import type { CellInput, StyleToken } from '../change';
import type { PageCell } from '../page';
import type { CardContext } from './cardContext';
import { TIME, VOLUME, overFills, place, workingsAt } from './cardContext';
import { MEASURED_IN, cell, cells, formula, ofProduct } from './cardFormulas';

const productList = (context: CardContext): PageCell[] => {
  const { sources, request, layout } = context;
  const work = workingsAt(layout.column.workings);
  const { row, column } = work.products;
  const heads = ['Product', 'Unit', 'Whole round', 'Cost'].map((label, at) =>
    place(row, column + at, label, 'header'),
  );
  const lines = request.products.flatMap(({ name, way }, index) => {
    const at = row + 1 + index;
    const unit = MEASURED_IN[way];
    const of = (what: Parameters<typeof ofProduct>[2]) => ofProduct(sources, cell(at, column), what);
    const cost =
      `IF(N(${of('price')})>0,IF(${cell(at, column + 2)}=0,0,FEED.COST(${cell(at, column + 2)},${cell(at, column + 1)},` +
      `${of('price')},${of('pack')},${of('packUnit')},${of('density')})),"not known")`;
    return [
      place(at, column, name, 'computed'),
      place(at, column + 1, unit, 'computed'),
      place(
        at,
        column + 2,
        formula(overFills(context, work.productColumns + 3 * index + 2)),
        'computed',
        '0.0##',
      ),
      place(at, column + 3, formula(cost), 'computed', '0.00'),
    ];
  });
  return [...heads, ...lines];
};

/** Beside the card and not printed: what can be changed on it, and the sums that the log takes over. */
export const workings = (context: CardContext): PageCell[] => {
  const { request, layout } = context;
  const first = layout.column.workings;
  const work = workingsAt(first);
  const figures = layout.stations.map(({ fillHeader }) => fillHeader);
  const sumOf = (column: number) => `SUM(${figures.map((row) => cell(row, column)).join(',')})`;
  const last = request.stations.length - 1;
  const finish = cell(
    layout.stations[last]!.firstFill + request.stations[last]!.fills - 1,
    layout.column.doneBy,
  );
  const { row, column } = work.products;
  const costs = cells(row + 1, column + 3, row + Math.max(1, request.products.length), column + 3);
  const known = `COUNT(${costs})=${request.products.length}`;
  const rows: [string, { row: number; column: number }, CellInput, StyleToken, string][] = [
    ['Date', work.date, request.date, 'input', 'yyyy-mm-dd'],
    ['Start', work.start, request.start, 'input', TIME],
    ['Fills: full or equal', work.style, request.style, 'input', '@'],
    ['Mix', work.mix, request.mixName, 'input', '@'],
    ['Fills now', work.fills, formula(sumOf(work.fills0)), 'computed', '0'],
    ['Plants', work.plants, formula(sumOf(work.plants0)), 'computed', '0'],
    ['Made up', work.madeUp, formula(overFills(context, layout.column.makeUp)), 'computed', VOLUME],
    ['Need', work.need, formula(sumOf(work.need0)), 'computed', VOLUME],
    ['Done by', work.finish, formula(finish), 'computed', TIME],
    [
      'Cost',
      work.cost,
      formula(request.products.length === 0 ? '0' : `IF(${known},SUM(${costs}),"not known")`),
      'computed',
      '0.00',
    ],
  ];
  return [
    ...rows.flatMap(([label, at, input, style, format]) => [
      place(at.row, at.column - 1, label, 'header'),
      place(at.row, at.column, input, style, format),
    ]),
    ...(request.products.length > 0 ? productList(context) : []),
  ];
};
