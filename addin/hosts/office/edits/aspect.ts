import type { Area } from '../../../workbook/change';
import type { BookAt } from '../bookAt';

import type { Piece } from './piece';

/** Something that lies on cells, which the program tells for an area only where it is the same on all of it. */
export interface Aspect {
  load(range: Excel.Range): void;
  /** How to put it back; undefined where the area's cells differ. */
  putBack(range: Excel.Range, area: Area): Piece | undefined;
}

/** Areas in one answer of the program. */
const AREAS_AT_ONCE = 400;

const split = (area: Area): Area[] => {
  if (area.columns > 1) {
    const columns = area.columns >> 1;
    return [
      { ...area, columns },
      { ...area, column: area.column + columns, columns: area.columns - columns },
    ];
  }
  const rows = area.rows >> 1;
  return [
    { ...area, rows },
    { ...area, row: area.row + rows, rows: area.rows - rows },
  ];
};

const holds = (outer: Area, inner: Area): boolean =>
  outer.sheet === inner.sheet &&
  outer.row <= inner.row &&
  outer.column <= inner.column &&
  outer.row + outer.rows >= inner.row + inner.rows &&
  outer.column + outer.columns >= inner.column + inner.columns;

/** The areas without those that lie within another. */
export const outermost = (areas: readonly Area[]): Area[] =>
  areas.filter(
    (area, at) =>
      !areas.some(
        (other, place) => place !== at && holds(other, area) && (!holds(area, other) || place < at),
      ),
  );

const keepAreas = async (at: BookAt, aspect: Aspect, areas: readonly Area[]): Promise<Piece[]> => {
  if (areas.length === 0) return [];
  const now = areas.slice(0, AREAS_AT_ONCE).map((area) => {
    const range = at.range(area);
    aspect.load(range);
    return { area, range };
  });
  await at.context.sync();
  const pieces: Piece[] = [];
  const unlike: Area[] = [];
  for (const { area, range } of now) {
    const piece = aspect.putBack(range, area);
    if (piece) pieces.push(piece);
    else if (area.rows * area.columns > 1) unlike.push(...split(area));
    else throw new Error(`What lies on a cell of “${area.sheet}” could not be read.`);
  }
  return [...pieces, ...(await keepAreas(at, aspect, [...unlike, ...areas.slice(AREAS_AT_ONCE)]))];
};

/**
 * How to put back what lies on the areas. One whose cells differ is asked for in halves, columns first, because a
 * table's columns are each alike.
 */
export const keepAspect = (at: BookAt, aspect: Aspect, areas: readonly Area[]): Promise<Piece[]> =>
  keepAreas(at, aspect, outermost(areas));
