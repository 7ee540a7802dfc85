import type { CardLayout, CardRequest } from './cardLayout';

/** Widths of a card's columns, in characters of the sheet's ordinary font. */
export const WIDTHS = {
  tick: 3,
  name: 19,
  /** Wide enough for the longest word of a size class. */
  other: 11,
  workings: 15,
} as const;

/** Wide enough for two lines of the large print, "3 1/3 cups 2 tsp (−0.8 %)", where there is room for it. */
export const measureWidth = ({ products }: CardRequest): number => (products.length > 1 ? 22 : 28);

/** Characters in the printed columns together. */
export const charactersAcross = (request: CardRequest, { column }: CardLayout): number => {
  const measures = request.products.length;
  const others = column.last - column.name - measures;
  return WIDTHS.tick + WIDTHS.name + measures * measureWidth(request) + others * WIDTHS.other;
};
