import type { CellInput, StyleToken } from '../change';
import type { PageCell } from '../page';
import { cell, cells } from './cardFormulas';
import type { CardLayout, CardRequest } from './cardLayout';
import type { CardSources } from './cardSources';

export const TIME = 'hh:mm';
export const VOLUME = '#,##0.0';

/** What every part of the card is made from. */
export interface CardContext {
  readonly sources: CardSources;
  readonly request: CardRequest;
  readonly layout: CardLayout;
}

/** A box to tick: an empty cell of one's own to fill, drawn as a box by every program. */
export const tickBox = (row: number, column: number): PageCell => ({
  row,
  column,
  input: null,
  style: 'input',
});

export const place = (
  row: number,
  column: number,
  input: CellInput,
  style?: StyleToken,
  format?: string,
): PageCell => ({ row, column, input, ...(style && { style }), ...(format && { format }) });

interface At {
  readonly row: number;
  readonly column: number;
}

/** Figures of a product, a row a product. The first six are the list that the log reads. */
export const PRODUCT_HEADS = {
  name: 'Product',
  unit: 'Unit',
  total: 'Whole round',
  cost: 'Cost',
  madeTotal: 'Whole round, as made',
  madeCost: 'Cost, as made',
  mixRow: 'Row of the mix',
  productRow: 'Row of the products',
  form: 'Form',
  rate: 'Rate',
  rateUnit: 'Rate, unit',
  greatest: 'Greatest rate',
  greatestUnit: 'Greatest rate, unit',
  density: 'Density',
  solubility: 'Solubility',
  each: 'In one unit of the barrel',
  greatestEach: 'Label allows in one',
  share: 'Share of the label',
  perLitre: 'In a litre',
  hotEach: 'Hot water for one',
  price: 'Price',
  pack: 'Pack',
  packUnit: 'Pack, unit',
  madeRate: 'Rate, as made',
  madeUnit: 'Rate, unit, as made',
  unchecked: 'Label not known',
  changed: 'Changed',
  oddDensity: 'Density cannot be read',
  oddGreatest: 'Greatest rate cannot be read',
  oddSolubility: 'Solubility cannot be read',
  oddPack: 'Pack cannot be read',
  oddPrice: 'Price cannot be read',
  oddPackUnit: 'Unit of the pack cannot be read',
  oddGreatestUnit: 'Unit of the greatest rate cannot be read',
  oddShare: 'Greatest rate is none of a label',
  unread: 'Cannot be read',
  over: 'Above the label',
  fault: 'What is wrong',
  beyond: 'Rate out of its range',
} as const;
export type ProductColumn = keyof typeof PRODUCT_HEADS;
export const PRODUCT_COLUMNS = Object.keys(PRODUCT_HEADS) as readonly ProductColumn[];

/** What is measured of a product for a fill, a row each. */
export const MEASURE_HEADS = {
  product: 'Product',
  exact: 'Exact',
  most: 'At most',
  measured: 'Measured',
  said: 'In words',
  off: 'Off',
} as const;
export type MeasureColumn = keyof typeof MEASURE_HEADS;
export const MEASURE_COLUMNS = Object.keys(MEASURE_HEADS) as readonly MeasureColumn[];

/** Figures of the rig, in the barrel's unit and in minutes; what is left blank there counts as what it stands for. */
export const RIG_ROWS = [
  'barrel',
  'unit',
  'heel',
  'hose',
  'fillLine',
  'working',
  'countStep',
  'spill',
  'walk',
  'premix',
  'move',
  'weight',
] as const;
export type RigRow = (typeof RIG_ROWS)[number];

/** Sums over the sizes, parts of the card's sentences, and last what it says in place of its measures; '' while it may show them. */
export const WORD_ROWS = [
  'held',
  'asked',
  'fills',
  'lasts',
  'percent',
  'more',
  'less',
  'unchecked',
  'first',
  'says',
] as const;
export type WordRow = (typeof WORD_ROWS)[number];

const GAP = 1;
const PAIRS = {
  date: [0, 1],
  start: [1, 1],
  style: [2, 1],
  mix: [3, 1],
  fills: [4, 1],
  plants: [5, 1],
} as const;
const MORE = {
  madeUp: [0, 3],
  need: [1, 3],
  finish: [2, 3],
  cost: [3, 3],
  reason: [4, 3],
  leftOut: [5, 3],
} as const;
const TIMES = 5;
const TIMES_TOLD = 3;
const PRODUCTS = TIMES + 2 * TIMES_TOLD + GAP;
const RIG = PRODUCTS + PRODUCT_COLUMNS.length + GAP;
const CHECKS = RIG + 2 + GAP;
const CHECKED = 2;
const MADE = CHECKS + CHECKED + GAP;
const MEASURES = MADE + 2 + GAP;

/** Where the workings stand, from their first column on. */
export const workingsAt = (first: number) => {
  const at = ([row, column]: readonly [number, number]): At => ({ row, column: first + column });
  return {
    date: at(PAIRS.date),
    start: at(PAIRS.start),
    style: at(PAIRS.style),
    mix: at(PAIRS.mix),
    fills: at(PAIRS.fills),
    plants: at(PAIRS.plants),
    madeUp: at(MORE.madeUp),
    need: at(MORE.need),
    finish: at(MORE.finish),
    cost: at(MORE.cost),
    reason: at(MORE.reason),
    leftOut: at(MORE.leftOut),
    /** Share by which the counts give more than the doses ask, and the heaviest fill. */
    apart: { row: 6, column: first + 1 },
    heaviest: { row: 6, column: first + 3 },
    /** A station's figures, in its row of fill heads. */
    need0: first,
    plants0: first + 1,
    fills0: first + 2,
    /** A fill's times in its row, minutes after midnight; to whole minutes in the three columns beside. */
    startAt: first + TIMES,
    pumpFrom: first + TIMES + 1,
    doneBy: first + TIMES + 2,
    /** From a time to the same in whole minutes. */
    whole: TIMES_TOLD,
    /** Header row of the products' figures. */
    products: { row: 0, column: first + PRODUCTS },
    product: (index: number, of: ProductColumn): At => ({
      row: 1 + index,
      column: first + PRODUCTS + PRODUCT_COLUMNS.indexOf(of),
    }),
    /** Labels of the rig's figures; what they come to stands beside. */
    rigLabels: { row: 0, column: first + RIG },
    rig: (of: RigRow): At => ({ row: RIG_ROWS.indexOf(of), column: first + RIG + 1 }),
    words: (of: WordRow): At => ({
      row: RIG_ROWS.length + WORD_ROWS.indexOf(of),
      column: first + RIG + 1,
    }),
    /** Sentence, and whether it must be said. */
    check: (index: number, of: 'sentence' | 'bad'): At => ({
      row: 1 + index,
      column: first + CHECKS + ['sentence', 'bad'].indexOf(of),
    }),
    /** What the round came to when the card was made. */
    made: { row: 1, column: first + MADE + 1 },
    measure: (index: number, of: MeasureColumn): At => ({
      row: 1 + index,
      column: first + MEASURES + MEASURE_COLUMNS.indexOf(of),
    }),
  };
};

/** A cell of the workings, as a formula names it. */
export const workings = ({ layout }: Pick<CardContext, 'layout'>) => {
  const work = workingsAt(layout.column.workings);
  const at = ({ row, column }: At): string => cell(row, column);
  return {
    work,
    at,
    product: (index: number, of: ProductColumn) => at(work.product(index, of)),
    rig: (of: RigRow) => at(work.rig(of)),
    measure: (index: number, of: MeasureColumn) => at(work.measure(index, of)),
    words: (of: WordRow) => at(work.words(of)),
    says: at(work.words('says')),
  };
};

/** Under which the plants of a bed and size stand in a request. */
export const plantedKey = (bed: string, sizeClass: string): string => `${bed}\u0000${sizeClass}`;

/** Place of a product of a fill among the measures, fills counted through the round. */
export const measureIndex = ({ request }: CardContext, fill: number, product: number): number =>
  fill * request.products.length + product;

/** One sum over the same column of every station's fills. */
export const overFills = ({ request, layout }: CardContext, column: number): string =>
  `SUM(${fillRanges({ request, layout }, column)})`;

/** The same column of every station's fills, as arguments. */
export const fillRanges = (
  { request, layout }: Pick<CardContext, 'request' | 'layout'>,
  column: number,
): string =>
  layout.stations
    .map(({ firstFill }, index) =>
      cells(firstFill, column, firstFill + request.stations[index]!.fills - 1, column),
    )
    .join(',');

/** The same column of every station's figures, and of nothing else that is a number. */
export const stationFigures = (
  { layout }: Pick<CardContext, 'layout'>,
  column: number,
  stations?: number,
): string => {
  const last = stations === undefined ? layout.total : layout.stations[stations]!.title;
  return cells(layout.stations[0]!.title, column, last, column);
};

/** A time of the round's last fill. */
export const lastTime = ({ request, layout }: CardContext, column: number): string => {
  const last = request.stations.length - 1;
  return cell(layout.stations[last]!.firstFill + request.stations[last]!.fills - 1, column);
};
