import { CommandType, type ICommand } from '@univerjs/core';

import { pagesOf, withPages, type PageSetup } from './bookPages';
import { openBook, type Grid } from './openGrid';

interface SetPage {
  readonly unitId: string;
  readonly sheetId: string;
  readonly page: PageSetup | undefined;
}

const SET_PAGE = 'wandcount.mutation.set-page';

export const pageOf = (grid: Grid, sheetId: string): PageSetup | undefined =>
  pagesOf(openBook(grid).getCustomMetadata())[sheetId];

/** The grid has no page set-up of its own; kept as a change of the grid's kind, it takes part in the undo. */
export const teachPages = (grid: Grid): void => {
  const setPage: ICommand<SetPage> = {
    id: SET_PAGE,
    type: CommandType.MUTATION,
    handler: (_accessor, params) => {
      const book = openBook(grid);
      if (!params || book.getId() !== params.unitId) return false;
      const custom = book.getCustomMetadata() ?? {};
      book.setCustomMetadata({
        ...custom,
        ...withPages({ ...pagesOf(custom), [params.sheetId]: params.page }),
      });
      return true;
    },
  };
  grid.commands.registerCommand(setPage as ICommand<object, unknown>);
};

export const setPage = (grid: Grid, sheetId: string, page: PageSetup): void => {
  const unitId = openBook(grid).getId();
  const params = (next: PageSetup | undefined): SetPage => ({ unitId, sheetId, page: next });
  const before = params(pageOf(grid, sheetId));
  grid.commands.syncExecuteCommand(SET_PAGE, params(page));
  grid.undo.pushUndoRedo({
    unitID: unitId,
    undoMutations: [{ id: SET_PAGE, params: before }],
    redoMutations: [{ id: SET_PAGE, params: params(page) }],
  });
};
