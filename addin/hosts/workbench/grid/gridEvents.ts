import { CommandType } from '@univerjs/core';
import {
  SetSelectionsOperation,
  SetWorksheetActiveOperation,
  SetWorksheetRowAutoHeightMutation,
} from '@univerjs/preset-sheets-core';

import { openBook, type Grid } from './openGrid';

export interface GridEvents {
  /** Something that a file keeps has changed, by whatever hand; `computed` where the grid itself worked it out of what was. */
  readonly changed: (computed: boolean) => void;
  readonly selected: (sheet: string, row: number, column: number) => void;
}

/** Heights follow from the text and are set whenever a row is drawn. */
const DRAWING: ReadonlySet<string> = new Set([SetWorksheetRowAutoHeightMutation.id]);
/** Changes of cells, rows, sheets, names, rules, notes and pages; the grid's own bookkeeping has other names. */
const KEPT = /^(sheet\.mutation\.|data-validation\.mutation\.|wandcount\.mutation\.)/;

/** Tells what happens in the grid until the returned function is called. */
export const watchGrid = (grid: Grid, { changed, selected }: GridEvents): (() => void) => {
  const watching = grid.commands.onCommandExecuted(({ id, type, params }, options) => {
    if (type === CommandType.MUTATION && KEPT.test(id) && !DRAWING.has(id)) {
      const { unitId } = (params ?? {}) as { unitId?: string };
      if (unitId === undefined || unitId === grid.api.getActiveWorkbook()?.getId())
        // Results of formulas, and what else the grid would not tell a second page: that would work it out itself.
        changed(options?.onlyLocal === true);
    }
    if (id !== SetSelectionsOperation.id && id !== SetWorksheetActiveOperation.id) return;
    const cell = grid.api.getActiveWorkbook() ? openBook(grid).getActiveCell() : undefined;
    if (cell) selected(cell.getSheetName(), cell.getRow(), cell.getColumn());
  });
  return () => watching.dispose();
};
