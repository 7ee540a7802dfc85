import type { SelectedCell } from '../../../taskpane/services';
import { openBook, type Grid } from './grid/openGrid';

/** The selected cell; undefined where it holds no formula, or none that has its result yet. */
export const selectedCell = async (grid: Grid): Promise<SelectedCell | undefined> => {
  await grid.settled();
  const cell = openBook(grid).getActiveCell();
  if (!cell?.getFormula() || grid.behind) return undefined;
  const shows = cell.getDisplayValue().trim();
  return { sheet: cell.getSheetName(), row: cell.getRow(), column: cell.getColumn(), shows };
};
