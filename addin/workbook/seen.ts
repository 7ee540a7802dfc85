import type { Area, Change } from './change';
import { WorkbookMoved, type Block, type CellState, type Outline, type Snapshot, type Wanted } from './port';
import { cellAt, sheetNamed } from './snapshot';

/** The areas that are wanted of a workbook of that outline. */
export const areasWanted = (wanted: Wanted, outline: Outline): readonly Area[] =>
  typeof wanted === 'function' ? wanted(outline) : wanted;

const same = (one: unknown, other: unknown): boolean => JSON.stringify(one) === JSON.stringify(other);

/**
 * Reads through a host that takes areas only and answers with cells and outline of one moment: until the outline asks
 * for the very areas that were read.
 */
export const readWanted = async (
  wanted: Wanted,
  read: (areas: readonly Area[]) => Promise<Snapshot>,
): Promise<Snapshot> => {
  for (let areas: readonly Area[] = typeof wanted === 'function' ? [] : wanted; ;) {
    const snapshot = await read(areas);
    const next = areasWanted(wanted, snapshot);
    if (same(areas, next)) return snapshot;
    areas = next;
  }
};

/** What was seen of a workbook and is still there: where to look whether it was edited. */
export const seenAreas = ({ blocks }: Snapshot, now: Outline): Area[] =>
  blocks.map(({ area }) => area).filter(({ sheet }) => sheetNamed(now, sheet) !== undefined);

/** What a user's hand changes in a cell; what formulas come to follows from it. */
const entryOf = ({ value, formula, error }: CellState): unknown => formula ?? [value, error];

const placesOf = ({ sheets, names, blocks }: Snapshot) => {
  const read = new Set(blocks.map(({ area }) => area.sheet));
  return {
    titles: sheets.map(({ name }) => name),
    read: sheets.filter(({ name }) => read.has(name)),
    names: Object.entries(names).sort(([one], [other]) => (one < other ? -1 : 1)),
  };
};

/** True where sheets, names, and every entry of the areas stand as they were seen. Results of formulas may differ. */
export const isAsSeen = (seen: Snapshot, now: Snapshot): boolean => {
  const entries = ({ blocks }: Snapshot) =>
    blocks.map(({ area, cells }) => [area, cells.map((line) => line.map(entryOf))]);
  return same(placesOf(seen), placesOf(now)) && same(entries(seen), entries(now));
};

/** True where a cell that the change writes over was edited between two readings. */
export const isContested = ({ edits }: Change, before: Snapshot, now: Snapshot): boolean =>
  edits.some(
    (edit) =>
      edit.kind === 'write' &&
      edit.cells.some((line, down) =>
        line.some((input, across) => {
          const at = [edit.sheet, edit.row + down, edit.column + across] as const;
          return input !== undefined && !same(entryOf(cellAt(before, ...at)), entryOf(cellAt(now, ...at)));
        }),
      ),
  );

/** @throws WorkbookMoved where `seen` was given and the workbook, of that outline and those blocks now, is not as seen */
export const refuseMoved = (
  seen: Snapshot | undefined,
  now: Outline,
  blockOf: (area: Area) => Block,
): void => {
  if (seen && !isAsSeen(seen, { ...now, blocks: seenAreas(seen, now).map(blockOf) }))
    throw new WorkbookMoved();
};
