import { only, type Area, type Edit } from '../../../workbook/change';

import { keepAspect, type Aspect } from './aspect';
import { byPiece, type Prepare } from './prepared';
import { piece, type Piece } from './piece';

/** The ordinary font's digits are 7 pixels wide, and 5 pixels are beside them (ECMA-376-1, 18.3.1.13); 0.75 pt a pixel. */
const PIXELS_A_CHARACTER = 7;
const PIXELS_BESIDE = 5;
const POINTS_A_PIXEL = 0.75;

/** A width in characters, as the program takes it: points. */
const pointsOf = (characters: number): number =>
  Math.round(characters * PIXELS_A_CHARACTER + PIXELS_BESIDE) * POINTS_A_PIXEL;

export const charactersOf = (points: number): number =>
  Math.max(0, (points / POINTS_A_PIXEL - PIXELS_BESIDE) / PIXELS_A_CHARACTER);

/** Whole columns are asked for, and set, in their first row. */
const firstRow = ({ sheet, column, columns }: Extract<Edit, { kind: 'width' }>): Area => ({
  sheet,
  row: 0,
  column,
  rows: 1,
  columns,
});

const setWidth = (area: Area, points: number): Piece =>
  piece(2, (at) => {
    at.range(area).format.columnWidth = points;
  });

const width: Aspect = {
  load: ({ format }) => {
    format.load('columnWidth');
  },
  putBack: ({ format: { columnWidth } }, area) =>
    columnWidth === null ? undefined : setWidth(area, columnWidth),
};

/** Widths of columns. */
export const prepareWidths: Prepare = async ({ at, edits, over }) => {
  const before = await keepAspect(at, width, only(over, 'width').map(firstRow));
  return {
    pieces: only(edits, 'width').map((edit) => setWidth(firstRow(edit), pointsOf(edit.characters))),
    putBack: before.map(byPiece),
  };
};
