import type { Area } from '../../../workbook/change';
import type { BookAt } from '../bookAt';
import type { Step } from '../write/step';

/** Something that lies on cells, which the program tells for an area only where it is the same on all of it. */
export interface Aspect {
  load(range: Excel.Range): void;
  /** How to put it back; undefined where the area's cells differ. */
  putBack(range: Excel.Range, area: Area): Step | undefined;
}

export interface Kept {
  readonly area: Area;
  readonly aspect: Aspect;
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

/**
 * How to put back what lies on the areas. One whose cells differ is asked for in halves, columns first, because a
 * table's columns are each alike.
 */
export const keepAspects = async (at: BookAt, kept: readonly Kept[]): Promise<Step[]> => {
  if (kept.length === 0) return [];
  const now = kept.slice(0, AREAS_AT_ONCE).map(({ area, aspect }) => {
    const range = at.range(area);
    aspect.load(range);
    return { area, aspect, range };
  });
  await at.context.sync();
  const steps: Step[] = [];
  const unlike: Kept[] = [];
  for (const { area, aspect, range } of now) {
    const step = aspect.putBack(range, area);
    if (step) steps.push(step);
    else if (area.rows * area.columns > 1)
      unlike.push(...split(area).map((half) => ({ area: half, aspect })));
    else throw new Error(`What lies on a cell of “${area.sheet}” could not be read.`);
  }
  return [...steps, ...(await keepAspects(at, [...unlike, ...kept.slice(AREAS_AT_ONCE)]))];
};
