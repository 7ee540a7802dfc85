import type { IRange } from '@univerjs/core';

import type { Area } from '../../../workbook/change';

/** An area as the grid's commands want it. */
export const rangeOf = (area: Omit<Area, 'sheet'>): IRange => ({
  startRow: area.row,
  endRow: area.row + area.rows - 1,
  startColumn: area.column,
  endColumn: area.column + area.columns - 1,
});

const PIXELS_A_CHARACTER = 8;
const PIXELS_BESIDE = 6;

/** A width in characters of the ordinary font, on the screen. */
export const pixelsOf = (characters: number): number =>
  Math.round(characters * PIXELS_A_CHARACTER + PIXELS_BESIDE);
export const charactersOf = (pixels: number): number =>
  Math.max(0, (pixels - PIXELS_BESIDE) / PIXELS_A_CHARACTER);
