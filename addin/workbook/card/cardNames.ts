import type { Area } from '../change';
import type { Outline, Snapshot } from '../port';
import { areaNamed, cellsOf, usedArea } from '../snapshot';
import { PRODUCT_COLUMNS, workingsAt } from './cardContext';
import type { CardLayout, CardRequest } from './cardLayout';

/** What is printed. */
export const CARD = 'Wandcount_Card';
/** The workings beside it. */
export const CARD_WORKINGS = 'Wandcount_Card_workings';
/** Both together in cards of earlier programs. */
const CARD_ALL = 'Wandcount_Card_all';

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

/** Cells that cards of earlier programs do not have. */
export const LATER_CELLS = { reason: 'Card_reason', leftOut: 'Card_left_out' } as const;

/** Says why the card no longer fits what it was made from; blank while it does. */
export const CARD_CHECK = 'Card_check';

/** Product, unit, amount for the whole round, cost, and both as the card was made: a row a product, without the heads. */
export const CARD_PRODUCTS = 'Card_products';
const LISTED = PRODUCT_COLUMNS.indexOf('madeCost') + 1;

/** What the round came to when the card was made. A card without it blanks no measure by itself. */
export const CARD_MADE = 'Card_as_made';
/** Figures of the record, in its order. */
export const MADE_ROWS = [
  'date',
  'start',
  'mix',
  'fills',
  'plants',
  'madeUp',
  'need',
  'finish',
  'unit',
  'cost',
] as const;

/** Where the named parts of a card stand. */
export const cardNames = (request: CardRequest, { column }: CardLayout): Record<string, Area> => {
  const { sheet, products } = request;
  const work = workingsAt(column.workings);
  const single = (at: { row: number; column: number }): Area => ({ sheet, ...at, rows: 1, columns: 1 });
  const all = { ...CARD_CELLS, ...LATER_CELLS };
  const cells = Object.entries(all).map(([key, name]) => [name, single(work[key as keyof typeof all])]);
  const list = { ...single(work.product(0, 'name')), rows: products.length, columns: LISTED };
  return {
    ...Object.fromEntries(cells),
    [CARD_CHECK]: single(work.words('says')),
    [CARD_MADE]: { ...single(work.made), rows: MADE_ROWS.length },
    ...(products.length > 0 ? { [CARD_PRODUCTS]: list } : {}),
  };
};

/** True where the workbook has a card that blanks no measure by itself: one that an earlier program made. */
export const isUnguarded = (outline: Outline): boolean =>
  areaNamed(outline, CARD) !== undefined && areaNamed(outline, CARD_MADE) === undefined;

/** Areas that the card fills: what the next one takes the place of. */
export const cardParts = (outline: Outline): Area[] => {
  const names = areaNamed(outline, CARD_WORKINGS) ? [CARD, CARD_WORKINGS] : [CARD_ALL, CARD];
  const areas = names.flatMap((name) => areaNamed(outline, name) ?? []);
  return names[0] === CARD_ALL ? areas.slice(0, 1) : areas;
};

/**
 * True where nothing on the card is a formula any more: somebody has pasted it as values, and it is his own.
 *
 * @param snapshot with `cardAreas` read
 */
export const isPasted = (snapshot: Snapshot): boolean => {
  const parts = cardParts(snapshot);
  return (
    parts.length > 0 &&
    parts.every((area) =>
      cellsOf(snapshot, area).every((row) => row.every(({ formula }) => formula === undefined)),
    )
  );
};

/** What to read of a workbook for its card: all that stands on its sheet; nothing where it has none. */
export const cardAreas = (outline: Outline): Area[] => {
  const card = areaNamed(outline, CARD);
  return card ? [usedArea(outline, card.sheet) ?? []].flat() : [];
};
