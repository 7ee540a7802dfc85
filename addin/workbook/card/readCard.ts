import type { CellState, Snapshot } from '../port';
import { areaNamed, cellAt, cellsOf, labelOf } from '../snapshot';
import { CARD, CARD_CELLS, CARD_CHECK, CARD_PRODUCTS } from './cardNames';
import type { CardCell } from './cardNames';

export interface CardProductReading {
  readonly product: string;
  readonly amount: number;
  readonly unit: string;
  /** Left out where the price is not known. */
  readonly cost?: number;
}

/** What the card says now. */
export interface CardReading {
  readonly sheet: string;
  /** The spreadsheet's serial day. */
  readonly date: number;
  /** Shares of the day. */
  readonly start: number;
  readonly finish: number;
  readonly mix: string;
  readonly fills: number;
  readonly plants: number;
  /** In `unit`. */
  readonly madeUp: number;
  readonly need: number;
  readonly unit: string;
  readonly cost?: number;
  readonly products: readonly CardProductReading[];
  /** Why the card no longer fits the garden, in the card's own words; left out while it does. */
  readonly outOfDate?: string;
}

const number = (cell: CellState): number | undefined =>
  typeof cell.value === 'number' ? cell.value : undefined;

/**
 * The card of the workbook, or undefined where there is none or where one of its figures is no number: then a
 * formula of it shows an error, or nothing computed it yet.
 *
 * @param snapshot with `cardAreas` and `gardenAreas` read
 */
export const readCard = (snapshot: Snapshot): CardReading | undefined => {
  const printed = areaNamed(snapshot, CARD);
  const unit = areaNamed(snapshot, 'Rig_barrel_unit');
  if (!printed || !unit) return undefined;
  const at = (name: string): CellState => {
    const area = areaNamed(snapshot, name);
    return area ? cellAt(snapshot, area.sheet, area.row, area.column) : { value: null };
  };
  const figure = (key: CardCell) => number(at(CARD_CELLS[key]));
  const figures = {
    date: figure('date'),
    start: figure('start'),
    finish: figure('finish'),
    fills: figure('fills'),
    plants: figure('plants'),
    madeUp: figure('madeUp'),
    need: figure('need'),
  };
  if (Object.values(figures).some((value) => value === undefined)) return undefined;
  const cost = figure('cost');
  const outOfDate = labelOf(at(CARD_CHECK));
  const list = areaNamed(snapshot, CARD_PRODUCTS);
  const products = list ? cellsOf(snapshot, list).map(productOf) : [];
  if (products.includes(undefined)) return undefined;
  return {
    ...(figures as Required<{ [Key in keyof typeof figures]: number }>),
    sheet: printed.sheet,
    mix: labelOf(at(CARD_CELLS.mix)),
    unit: labelOf(at('Rig_barrel_unit')),
    ...(cost === undefined ? {} : { cost }),
    ...(outOfDate === '' ? {} : { outOfDate }),
    products: products as CardProductReading[],
  };
};

const productOf = (cells: readonly CellState[]): CardProductReading | undefined => {
  const [product, unit, amount, cost] = cells;
  const [amountNow, costNow] = [amount && number(amount), cost && number(cost)];
  if (!product || !unit || amountNow === undefined) return undefined;
  return {
    product: labelOf(product),
    unit: labelOf(unit),
    amount: amountNow,
    ...(costNow === undefined ? {} : { cost: costNow }),
  };
};
