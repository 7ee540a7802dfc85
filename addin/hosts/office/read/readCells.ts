import type { Area } from '../../../workbook/change';
import type { BookAt } from '../bookAt';
import { isTooLarge } from '../failures';

/** Cells in one answer of the program, which holds 5 MB at most; an answer that is larger all the same is halved. */
const CELLS_AT_ONCE = 25_000;

const size = ({ rows, columns }: Area): number => rows * columns;

/** Areas of at most so many cells that together make up the area, from the top. */
export const inPieces = (area: Area, most = CELLS_AT_ONCE): Area[] => {
  const rows = Math.max(1, Math.floor(most / area.columns));
  return Array.from({ length: Math.ceil(area.rows / rows) }, (_, at) => ({
    ...area,
    row: area.row + at * rows,
    rows: Math.min(rows, area.rows - at * rows),
  }));
};

const halves = (areas: readonly Area[]): [readonly Area[], readonly Area[]] | undefined => {
  if (areas.length > 1) return [areas.slice(0, areas.length >> 1), areas.slice(areas.length >> 1)];
  const [only] = areas;
  if (!only || only.rows < 2) return undefined;
  const rows = only.rows >> 1;
  return [[{ ...only, rows }], [{ ...only, row: only.row + rows, rows: only.rows - rows }]];
};

/** What was loaded of one area. */
export interface Loaded {
  readonly area: Area;
  readonly range: Excel.Range;
}

const load = async (at: BookAt, areas: readonly Area[], properties: string): Promise<Loaded[]> => {
  const loaded = areas.map((area) => {
    const range = at.range(area);
    range.load(properties);
    return { area, range };
  });
  try {
    await at.context.sync();
    return loaded;
  } catch (error) {
    const parts = isTooLarge(error) ? halves(areas) : undefined;
    if (!parts) throw error;
    return [...(await load(at, parts[0], properties)), ...(await load(at, parts[1], properties))];
  }
};

const inGroups = (areas: readonly Area[]): Area[][] => {
  const groups: Area[][] = [];
  let room = 0;
  for (const area of areas.flatMap((one) => inPieces(one))) {
    if (size(area) > room) {
      groups.push([]);
      room = CELLS_AT_ONCE;
    }
    groups.at(-1)!.push(area);
    room -= size(area);
  }
  return groups;
};

/**
 * Loads properties of the areas' cells, as many answers of the program as their size needs. An area may come back in
 * several pieces, in order.
 */
export const loadCells = async (
  at: BookAt,
  areas: readonly Area[],
  properties: string,
): Promise<readonly Loaded[]> => {
  const loaded: Loaded[] = [];
  for (const group of inGroups(areas)) loaded.push(...(await load(at, group, properties)));
  return loaded;
};
