import type { ICellData } from '@univerjs/core';
import { SetRangeValuesMutation, SetRangeValuesUndoMutationFactory } from '@univerjs/preset-sheets-core';

import { WorkbookError } from '../../../workbook/port';
import { breathe } from './breathe';
import type { Patches } from './cellPatches';
import { inside, type Grid } from './openGrid';

/** Rows from which on a sheet is written piece by piece. */
const LONG = 2_000;
/** Cells that are written at one go. */
const VALUES_AT_ONCE = 2_500;
/** More of them, because the grid goes through all formulas of the sheet each time. */
const FORMULAS_AT_ONCE = 7_500;

export const isLong = (patches: Patches): boolean => Object.keys(patches).length > LONG;

/** The cells in pieces: first those without a formula, as each piece costs the more the more formulas there are. */
const pieces = function* (patches: Patches): Generator<Patches> {
  const wanted = [
    { atOnce: VALUES_AT_ONCE, fits: (cell: ICellData) => !cell.f },
    { atOnce: FORMULAS_AT_ONCE, fits: (cell: ICellData) => Boolean(cell.f) },
  ];
  for (const { atOnce, fits } of wanted) {
    let [piece, count]: [Patches, number] = [{}, 0];
    for (const [row, line] of Object.entries(patches)) {
      for (const [column, cell] of Object.entries(line)) {
        if (!fits(cell)) continue;
        (piece[Number(row)] ??= {})[Number(column)] = cell;
        count += 1;
      }
      if (count < atOnce) continue;
      yield piece;
      [piece, count] = [{}, 0];
    }
    if (count > 0) yield piece;
  }
};

/**
 * Writes many cells piece by piece, so that the page answers in between. The grid is locked from then on: who began the
 * change unlocks it when that is whole. Rows are not fitted one by one. Every piece goes on the undo.
 */
export const writeLong = async (
  grid: Grid,
  place: { readonly unitId: string; readonly subUnitId: string },
  patches: Patches,
): Promise<void> => {
  grid.lock();
  for (const cellValue of pieces(patches)) {
    const params = { ...place, cellValue };
    const undo = SetRangeValuesUndoMutationFactory(inside(grid), params);
    if (!grid.commands.syncExecuteCommand(SetRangeValuesMutation.id, params))
      throw new WorkbookError('The workbook did not take the change, and stays as it was.');
    grid.undo.pushUndoRedo({
      unitID: place.unitId,
      undoMutations: [{ id: SetRangeValuesMutation.id, params: undo }],
      redoMutations: [{ id: SetRangeValuesMutation.id, params }],
    });
    await breathe();
  }
};
