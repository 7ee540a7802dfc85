import type { Area } from '../change';
import type { CellState, Snapshot } from '../port';
import { areaNamed, cellAt, cellsOf, isEmpty, labelOf } from '../snapshot';
import {
  CARD,
  CARD_CELLS,
  CARD_CHECK,
  CARD_MADE,
  CARD_PRODUCTS,
  LATER_CELLS,
  MADE_ROWS,
  isPasted,
  isUnguarded,
} from './cardNames';

export interface CardProductReading {
  readonly product: string;
  readonly amount: number;
  readonly unit: string;
  /** Left out where the price is not known. */
  readonly cost?: number;
}

/** What the card says now; once it is out of date, what it said when it was made. */
export interface CardReading {
  readonly sheet: string;
  /** The spreadsheet's serial day. */
  readonly date: number;
  /** Shares of the day. */
  readonly start: number;
  readonly finish: number;
  readonly style: 'full' | 'equal';
  readonly mix: string;
  readonly fills: number;
  readonly plants: number;
  /** In `unit`. */
  readonly madeUp: number;
  readonly need: number;
  readonly unit: string;
  readonly cost?: number;
  readonly products: readonly CardProductReading[];
  /** Why a rate above a label was planned; left out where none was. */
  readonly overLabelReason?: string;
  readonly leaveOutUnread: boolean;
  /** Why the card no longer fits the garden, in the card's own words; left out while it does. */
  readonly outOfDate?: string;
  /** What it said when it was made, where it has followed a change of the sheets since. */
  readonly asMade?: CardReading;
}

/** What is said of a card that blanks no measure by itself. */
export const EARLIER_CARD =
  'An earlier version made this card: it does not keep to the label when a rate changes. Make the card again.';

const number = (cell: CellState): number | undefined =>
  typeof cell.value === 'number' ? cell.value : undefined;

const at = (snapshot: Snapshot, name: string): CellState => {
  const area = areaNamed(snapshot, name);
  return area ? cellAt(snapshot, area.sheet, area.row, area.column) : { value: null };
};

type Figures = Record<
  'date' | 'start' | 'fills' | 'plants' | 'madeUp' | 'need' | 'finish',
  number | undefined
> & {
  readonly mix: string;
  readonly unit: string;
  readonly cost: number | undefined;
};

/** What the card says now. */
const figuresNow = (snapshot: Snapshot): Figures => {
  const figure = (key: keyof typeof CARD_CELLS) => number(at(snapshot, CARD_CELLS[key]));
  return {
    date: figure('date'),
    start: figure('start'),
    mix: labelOf(at(snapshot, CARD_CELLS.mix)),
    fills: figure('fills'),
    plants: figure('plants'),
    madeUp: figure('madeUp'),
    need: figure('need'),
    finish: figure('finish'),
    unit: labelOf(at(snapshot, 'Rig_barrel_unit')),
    cost: figure('cost'),
  };
};

/** Rows of an area but those that a user put in and left empty. */
const filledRows = (snapshot: Snapshot, area: Area): CellState[][] =>
  cellsOf(snapshot, area).filter((line) => line.some((cell) => !isEmpty(cell)));

/** What it said when it was made; undefined on a card of an earlier program. */
const figuresMade = (snapshot: Snapshot): Figures | undefined => {
  const area = areaNamed(snapshot, CARD_MADE);
  if (!area) return undefined;
  const cells = filledRows(snapshot, area).map(([cell]) => cell!);
  const of = (key: (typeof MADE_ROWS)[number]) => cells[MADE_ROWS.indexOf(key)] ?? { value: null };
  return {
    date: number(of('date')),
    start: number(of('start')),
    mix: labelOf(of('mix')),
    fills: number(of('fills')),
    plants: number(of('plants')),
    madeUp: number(of('madeUp')),
    need: number(of('need')),
    finish: number(of('finish')),
    unit: labelOf(of('unit')),
    cost: number(of('cost')),
  };
};

const productOf =
  (made: boolean) =>
  ([product, unit, amount, cost, madeAmount, madeCost]: readonly CellState[]):
    CardProductReading | undefined => {
    const [amountCell, costCell] = made ? [madeAmount, madeCost] : [amount, cost];
    const told = amountCell && number(amountCell);
    const price = costCell && number(costCell);
    if (!product || !unit || told === undefined) return undefined;
    return {
      product: labelOf(product),
      unit: labelOf(unit),
      amount: told,
      ...(price === undefined ? {} : { cost: price }),
    };
  };

const outOfDateWords = (snapshot: Snapshot): string => {
  if (isUnguarded(snapshot)) return EARLIER_CARD;
  if (isPasted(snapshot)) return 'This card was pasted as values: it follows no change. Make the card again.';
  const said = at(snapshot, CARD_CHECK);
  // A formula's empty text may be told as nothing; what is not worked out has no number of fills either.
  const told = said.value !== null || number(at(snapshot, CARD_CELLS.fills)) !== undefined;
  const inputs = [CARD_CELLS.date, CARD_CELLS.start].every(
    (name) => number(at(snapshot, name)) !== undefined,
  );
  const words = labelOf(said);
  return said.error === undefined && told && (words !== '' || inputs)
    ? words
    : 'The card cannot be worked out here. Make the card again.';
};

/** As the card says now or, where it keeps that, as it said when it was made. */
const reading = (
  snapshot: Snapshot,
  sheet: string,
  outOfDate: string,
  asMade: boolean,
): CardReading | undefined => {
  const made = figuresMade(snapshot);
  const { mix, unit, cost, ...figures } = asMade && made !== undefined ? made : figuresNow(snapshot);
  if (Object.values(figures).some((value) => value === undefined)) return undefined;
  const list = areaNamed(snapshot, CARD_PRODUCTS);
  const products = list ? filledRows(snapshot, list).map(productOf(asMade && made !== undefined)) : [];
  if (products.includes(undefined)) return undefined;
  const reason = labelOf(at(snapshot, LATER_CELLS.reason));
  return {
    ...(figures as Required<{ [Key in keyof typeof figures]: number }>),
    sheet,
    style: labelOf(at(snapshot, CARD_CELLS.style)).toLowerCase() === 'equal' ? 'equal' : 'full',
    // A mix that is called otherwise later is logged, and found in the log, as what was fed.
    mix: made?.mix ?? mix,
    unit,
    leaveOutUnread: labelOf(at(snapshot, LATER_CELLS.leftOut)) === 'yes',
    ...(cost === undefined ? {} : { cost }),
    ...(reason === '' ? {} : { overLabelReason: reason }),
    ...(outOfDate === '' ? {} : { outOfDate }),
    products: products as CardProductReading[],
  };
};

/** Far above what programs keep of a computed number, far below what anybody measures. */
const SAME = 1e-6;

/** True where the same was fed by both. */
const sameRound = (one: CardReading, other: CardReading): boolean => {
  const fed = ({ unit, fills, plants, madeUp, need, products }: CardReading) => ({
    unit,
    numbers: [fills, plants, madeUp, need, ...products.map(({ amount }) => amount)],
  });
  const [first, second] = [fed(one), fed(other)];
  return (
    first.unit === second.unit &&
    first.numbers.every((number, at) => Math.abs(number - second.numbers[at]!) <= SAME * Math.abs(number))
  );
};

/**
 * The card of the workbook, or undefined where there is none or where one of its figures is no number: then nothing
 * computed it yet. A card that is out of date answers with what it was made with; one that has followed a change, with
 * both.
 *
 * @param snapshot with `cardAreas` and `gardenAreas` read
 */
export const readCard = (snapshot: Snapshot): CardReading | undefined => {
  const printed = areaNamed(snapshot, CARD);
  if (!printed || !areaNamed(snapshot, 'Rig_barrel_unit')) return undefined;
  const outOfDate = outOfDateWords(snapshot);
  const told = (asMade: boolean) => reading(snapshot, printed.sheet, outOfDate, asMade);
  if (outOfDate !== '') return told(true);
  const [now, made] = [told(false), told(true)];
  return now === undefined || made === undefined || sameRound(now, made) ? now : { ...now, asMade: made };
};
