import type { ListCell } from '../addin/core';
import type { CellState, Workbook } from '../addin/workbook/port';

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

/** The sheet to adopt: the one chosen, else the one that is open, else the longest; undefined where there is none. */
export const sheetToAdopt = (state: PaneState): string | undefined => {
  const { ownSheets } = state;
  const guess = ownSheets.find(({ active }) => active) ?? [...ownSheets].sort((a, b) => b.rows - a.rows)[0];
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

const listCell = ({ value, error }: CellState): ListCell => error ?? value;

/**
 * Reads a sheet from A1 to its last cell, block by block.
 *
 * @throws Stopped where the user stopped it
 */
export const readChosenList = async (workbook: Workbook, sheet: string, work: Work): Promise<ChosenList> => {
  const { sheets } = await workbook.outline();
  const found = sheets.find(({ name }) => name === sheet);
  const { rows = 0, columns = 0, merges = [] } = found ?? {};
  const atOnce = Math.max(1, Math.floor(CELLS_AT_ONCE / Math.max(1, columns)));
  const cells: ListCell[][] = [];
  for (let row = 0; row < rows && columns > 0; row += atOnce) {
    if (row > 0)
      await work.step(
        `Reading “${sheet}”: ${row.toLocaleString('en-US')} of ${rows.toLocaleString('en-US')} rows`,
        row / rows,
      );
    const area = { sheet, row, column: 0, rows: Math.min(atOnce, rows - row), columns };
    const snapshot = await workbook.read([area]);
    for (const line of snapshot.blocks[0]?.cells ?? []) cells.push(line.map(listCell));
  }
  // What is read of a long list is a second's work, too.
  if (rows > atOnce) await work.step(`Looking through ${rows.toLocaleString('en-US')} rows`, 1);
  return { sheet, cells: { cells, merges } };
};
