import type { System } from '../../core';
import { cellAddress } from '../address';
import type { Area, Change, Edit } from '../change';
import { touchedBy } from '../locks';
import { WorkbookError, type Outline, type Snapshot } from '../port';
import type { Garden } from '../garden';
import { gardenAreas, readGarden } from '../readGarden';
import { SHAPE_CELL } from '../sheets/settings';
import { areaNamed, cellAt } from '../snapshot';
import { labelKeepingCard } from './labelKeepingCard';
import type { Shape } from './shape';
import { shortFormulas } from './shortFormulas';
import { snapshotAfter } from './snapshotAfter';
import { wholeSheets } from './wholeSheets';

/** Every shape that workbooks have had, the oldest first. A new one is put at the end and never taken out again. */
const SHAPES: readonly Shape[] = [wholeSheets, labelKeepingCard, shortFormulas];

/** The shape that this program makes: the number of the last. */
export const SHAPE = SHAPES.length;

/** What to read of a workbook to know its shape. */
export const shapeAreas = (outline: Outline): Area[] => [areaNamed(outline, SHAPE_CELL) ?? []].flat();

/** The number of a workbook's shape; 0 where it tells none: what it lacks, it may never have had. */
export const shapeOf = (snapshot: Snapshot): number => {
  const [area] = shapeAreas(snapshot);
  const { value = null } = area ? cellAt(snapshot, area.sheet, area.row, area.column) : {};
  return typeof value === 'number' && value >= 1 ? value : 0;
};

/**
 * Why nothing is written to a workbook that a newer program has made; undefined for any other.
 *
 * @param snapshot with `shapeAreas` read
 */
export const newerWords = (snapshot: Snapshot): string | undefined => {
  const [area] = shapeAreas(snapshot);
  return area === undefined || shapeOf(snapshot) <= SHAPE
    ? undefined
    : `A newer program has worked on these sheets (${area.sheet}, cell ${cellAddress(area.row, area.column)}), so this one only reads them and writes nothing.`;
};

/**
 * Every host calls this before it touches the workbook: what a newer program keeps is not written over by one that does
 * not know it.
 *
 * @throws WorkbookError in a workbook of a newer program
 */
export const refuseNewer = ({ edits }: Change, snapshot: Snapshot): void => {
  const why = newerWords(snapshot);
  if (why !== undefined && touchedBy(edits).workbook) throw new WorkbookError(why);
};

export interface Shaped {
  /** As the workbook will read once the edits are applied. */
  readonly snapshot: Snapshot;
  readonly edits: readonly Edit[];
  /** What is told of them. */
  readonly says: readonly string[];
}

/**
 * Brings a workbook to the shape that this program makes: what an action decides is decided on top of it.
 *
 * @param snapshot with `gardenAreas`, `cardAreas` and `logAreas` read
 */
export const inShape = (snapshot: Snapshot, measures: System): Shaped => {
  const known = shapeOf(snapshot);
  let shaped: Shaped = { snapshot, edits: [], says: [] };
  if (gardenAreas(snapshot).length === 0) return shaped;
  const add = ({ edits, says = [] }: Pick<Change, 'edits' | 'says'>): void => {
    shaped = {
      snapshot: snapshotAfter(shaped.snapshot, edits),
      edits: [...shaped.edits, ...edits],
      says: [...shaped.says, ...says],
    };
  };
  for (const [index, { step, always }] of SHAPES.entries()) {
    const change = known > index && !always ? undefined : step(shaped.snapshot, measures);
    if (change) add(change);
  }
  const [cell] = shapeAreas(shaped.snapshot);
  if (known < SHAPE && cell) {
    const { sheet, row, column } = cell;
    add({ edits: [{ kind: 'write', sheet, row, column, cells: [[SHAPE]] }] });
  }
  return shaped;
};

/**
 * The garden of a workbook, of an earlier program's as it will be in this one's shape: what it never had is not missed.
 *
 * @param snapshot with `gardenAreas`, `cardAreas` and `logAreas` read
 * @param measures where the workbook tells none
 */
export const gardenInShape = (snapshot: Snapshot, measures: System): Garden => {
  const garden = readGarden(snapshot);
  const { has, settings } = garden;
  const used = has.settings ? settings.measures : measures;
  const shaped = (): Garden => {
    try {
      return readGarden(inShape(snapshot, used).snapshot);
    } catch (error) {
      // What cannot be made is said to one who wants it made.
      if (error instanceof WorkbookError) return garden;
      throw error;
    }
  };
  const read = shapeOf(snapshot) < SHAPE ? shaped() : garden;
  return read.has.settings ? read : { ...read, settings: { ...read.settings, measures: used } };
};
