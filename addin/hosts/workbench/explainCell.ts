import { tellCall } from '../../../functions';
import type { CellExplanation } from '../../../taskpane/services';
import { ERRORS } from './grid/cells';
import type { FeedFunctions } from './grid/feedFunctions';
import { openBook, type Grid } from './grid/openGrid';
import { feedSpelling } from '../../workbook/feedSpelling';

/**
 * Why the selected cell shows what it shows: the sentence of a FEED function that refused, and every FEED
 * computation in it told in steps. Undefined where the cell holds no formula, or none that has its result yet.
 */
export const explainSelected = async (
  grid: Grid,
  functions: FeedFunctions,
): Promise<CellExplanation | undefined> => {
  const cell = openBook(grid).getActiveCell();
  const formula = cell?.getFormula();
  // While the grid is at work it takes no other formula.
  if (!cell || !formula || grid.behind) return undefined;
  const calls = /\bFEED\./i.test(feedSpelling(formula))
    ? await functions.callsOf(cell.getUnitId(), cell.getSheetId(), formula)
    : [];
  await grid.settled();
  const shows = cell.getDisplayValue().trim();
  const refused = calls
    .map(({ outcome }) => ('error' in outcome ? outcome.sentence : undefined))
    .find(Boolean);
  return {
    sheet: cell.getSheetName(),
    row: cell.getRow(),
    column: cell.getColumn(),
    formula: feedSpelling(formula),
    shows,
    ...(refused && ERRORS.has(shows) ? { sentence: refused } : {}),
    working: calls.flatMap(({ name, args }) => tellCall(name, args)),
  };
};
