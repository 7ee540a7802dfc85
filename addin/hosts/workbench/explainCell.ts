import { explained } from '../../../taskpane/explained';
import type { CellExplanation } from '../../../taskpane/services';
import { feedSpelling } from '../../workbook/feedSpelling';
import type { Workbook } from '../../workbook/port';
import { ERRORS } from './grid/cells';
import type { FeedFunctions } from './grid/feedFunctions';
import { openBook, type Grid } from './grid/openGrid';

/**
 * Why the selected cell shows what it shows. Undefined where the cell holds no formula, or none that has its result
 * yet.
 */
export const explainSelected = async (
  grid: Grid,
  workbook: Workbook,
  functions: FeedFunctions,
): Promise<CellExplanation | undefined> => {
  const cell = openBook(grid).getActiveCell();
  const written = cell?.getFormula();
  // While the grid is at work it takes no other formula.
  if (!cell || !written || grid.behind) return undefined;
  const formula = feedSpelling(written);
  const calls = /\bFEED\./i.test(formula)
    ? await functions.callsOf(cell.getUnitId(), cell.getSheetId(), written)
    : [];
  await grid.settled();
  const shows = cell.getDisplayValue().trim();
  const at = { sheet: cell.getSheetName(), row: cell.getRow(), column: cell.getColumn() };
  return explained(workbook, { ...at, formula, shows, failed: ERRORS.has(shows) }, { calls });
};
