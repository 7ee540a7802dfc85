import type { Area } from '../change';
import type { Outline } from '../port';
import { areaNamed } from '../snapshot';
import type { CardLayout, CardRequest } from './cardLayout';
import { workingsAt } from './cardContext';

/** What is printed. */
export const CARD = 'Wandcount_Card';
/** The card with its workings: what the next card is laid over. */
export const CARD_ALL = 'Wandcount_Card_all';

export const CARD_CELLS = {
  date: 'Card_date',
  start: 'Card_start',
  style: 'Card_style',
  mix: 'Card_mix',
  fills: 'Card_fills',
  plants: 'Card_plants',
  madeUp: 'Card_made_up',
  need: 'Card_need',
  finish: 'Card_finish',
  cost: 'Card_cost',
} as const;
export type CardCell = keyof typeof CARD_CELLS;

/** Says in the sheet why the card no longer fits what it was made from; blank while it does. */
export const CARD_CHECK = 'Card_check';
export const CHECK_AT = { row: 2, column: 0 };

/** Product, unit, amount for the whole round, cost: a row a product, without the heads. */
export const CARD_PRODUCTS = 'Card_products';

/** Where the named parts of a card stand. */
export const cardNames = ({ sheet, products }: CardRequest, { column }: CardLayout): Record<string, Area> => {
  const work = workingsAt(column.workings);
  const single = (at: { row: number; column: number }): Area => ({ sheet, ...at, rows: 1, columns: 1 });
  const cells = Object.entries(CARD_CELLS).map(([key, name]) => [name, single(work[key as CardCell])]);
  const list = { ...single(work.products), row: work.products.row + 1, rows: products.length, columns: 4 };
  const check = { [CARD_CHECK]: single(CHECK_AT) };
  return {
    ...Object.fromEntries(cells),
    ...check,
    ...(products.length > 0 ? { [CARD_PRODUCTS]: list } : {}),
  };
};

/** What to read of a workbook for its card; nothing where it has none. */
export const cardAreas = (outline: Outline): Area[] =>
  areaNamed(outline, CARD) === undefined
    ? []
    : [...Object.values(CARD_CELLS), CARD_CHECK, CARD_PRODUCTS].flatMap(
        (name) => areaNamed(outline, name) ?? [],
      );
