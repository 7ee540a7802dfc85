import type { ListCell } from '../addin/core';
import type { Area } from '../addin/workbook/change';
import type { CellState, Outline, SheetOutline } from '../addin/workbook/port';
import { sheetNamed, usedArea } from '../addin/workbook/snapshot';

import type { Work } from './action';
import type { ChosenList } from './adoption';
import { textOf } from './asked';
import type { PaneState } from './state';

export const SHEET_FIELD = 'adopt.sheet';
/** The fold that offers another list once there is a garden. */
export const AGAIN_FOLD = 'garden.again';

// Rows are read in blocks of about so many cells: small enough that the host breathes in between.
const CELLS_AT_ONCE = 20_000;

/** True while the Garden section shows how a list would be adopted. */
export const adopting = ({ garden, folds }: PaneState): boolean =>
  garden !== undefined && (!garden.has.plants || folds[AGAIN_FOLD] === true);

/** The sheet to adopt: the one chosen, else the one shown, the one that is open, the longest; undefined where there is none. */
export const sheetToAdopt = (state: PaneState): string | undefined => {
  const { ownSheets, list } = state;
  const guess =
    ownSheets.find(({ name }) => name === list?.sheet) ??
    ownSheets.find(({ active }) => active) ??
    [...ownSheets].sort((a, b) => b.rows - a.rows)[0];
  const chosen = textOf(state, SHEET_FIELD, guess?.name ?? '');
  return ownSheets.some(({ name }) => name === chosen) ? chosen : guess?.name;
};

/** The sheet that must be read before the Garden section can show it; undefined where nothing is to be read. */
export const listWanted = (state: PaneState): string | undefined => {
  if (state.section !== 'garden' || !adopting(state)) return undefined;
  const sheet = sheetToAdopt(state);
  const isRead = sheet === state.list?.sheet && !state.listStale;
  return isRead || sheet === state.listStopped ? undefined : sheet;
};

/** True where two readings of a list are the same. */
export const isSameList = (one: ChosenList, other: ChosenList): boolean =>
  JSON.stringify(one) === JSON.stringify(other);

const listCell = ({ value, error }: CellState): ListCell => error ?? value;

/** The next rows of a sheet. */
const rowsFrom = (outline: Outline, sheet: string, row: number): Area[] => {
  const used = usedArea(outline, sheet);
  if (!used || row >= used.rows) return [];
  const atOnce = Math.max(1, Math.floor(CELLS_AT_ONCE / used.columns));
  return [{ ...used, row, rows: Math.min(atOnce, used.rows - row) }];
};

/**
 * Reads a sheet from A1 to its last cell, block by block; from the top again where it grew or shrank meanwhile.
 *
 * @throws Stopped where the user stopped it
 */
export const readChosenList = async (sheet: string, { step, read }: Work): Promise<ChosenList> => {
  let cells: ListCell[][] = [];
  let before: SheetOutline | undefined;
  for (;;) {
    const snapshot = await read((outline) => rowsFrom(outline, sheet, cells.length));
    const now = sheetNamed(snapshot, sheet);
    if (before && JSON.stringify(before) !== JSON.stringify(now)) cells = [];
    else for (const line of snapshot.blocks[0]?.cells ?? []) cells.push(line.map(listCell));
    before = now;
    const { rows = 0, merges = [] } = now ?? {};
    const share = rows === 0 ? 1 : cells.length / rows;
    const of = rows.toLocaleString('en-US');
    if (share >= 1) return { sheet, cells: { cells, merges } };
    await step(`Reading “${sheet}”: ${cells.length.toLocaleString('en-US')} of ${of} rows`, share);
  }
};
