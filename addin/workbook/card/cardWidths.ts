import type { CardLayout, CardRequest } from './cardLayout';

/** Widths of a card's columns, in characters of the sheet's ordinary font. */
export const WIDTHS = {
  tick: 3,
  name: 19,
  /** Wide enough for two lines of the large print: "3 1/3 cups 2 tsp (-0.8 %)". */
  measure: 22,
  /** Wide enough for the longest word of a size class. */
  other: 11,
  workings: 15,
} as const;

/** Characters in the printed columns together. */
export const charactersAcross = ({ products }: CardRequest, { column }: CardLayout): number => {
  const others = column.last - column.name - products.length;
  return WIDTHS.tick + WIDTHS.name + products.length * WIDTHS.measure + others * WIDTHS.other;
};
