import { GRID } from '../../../workbook/validateChange';
import type { BookAt } from '../bookAt';
import { setFreeze } from '../write/freeze';
import { SIDES } from '../write/page';
import { step, type Step } from '../write/step';

const CELLS = /(?:'(?:[^']|'')*'|[^',!]*)!(\$?[A-Z]+\$?\d+(?::\$?[A-Z]+\$?\d+)?)/gi;

/** "A1:C9,E1" of "'Round card'!A1:C9,'Round card'!E1". */
const onItsSheet = (address: string): string =>
  [...address.matchAll(CELLS)].map(([, cells]) => cells).join(',');

/** Frozen rows and columns of the sheets. */
export const keepFreezes = async (at: BookAt, sheets: readonly string[]): Promise<Step[]> => {
  if (sheets.length === 0) return [];
  const kept = sheets.map((name) => {
    const location = at.sheet(name).freezePanes.getLocationOrNullObject();
    location.load('rowCount,columnCount');
    return { name, location };
  });
  await at.context.sync();
  return kept.map(({ name, location }) => {
    // Rows alone are frozen over all columns, and columns alone over all rows.
    const rows = location.isNullObject || location.rowCount >= GRID.rows ? 0 : location.rowCount;
    const columns = location.isNullObject || location.columnCount >= GRID.columns ? 0 : location.columnCount;
    return setFreeze({ kind: 'freeze', sheet: name, rows, columns });
  });
};

const fewer = (zoom: Excel.PageLayoutZoomOptions): Excel.PageLayoutZoomOptions =>
  Object.fromEntries(Object.entries(zoom).filter(([, value]) => value !== null && value !== undefined));

/**
 * How the sheets print. A print area that was not there before cannot be taken off again, so pages are set up after
 * all else that may fail.
 */
export const keepPages = async (at: BookAt, sheets: readonly string[]): Promise<Step[]> => {
  if (sheets.length === 0) return [];
  const kept = sheets.map((name) => {
    const { pageLayout } = at.sheet(name);
    const area = pageLayout.getPrintAreaOrNullObject();
    const rows = pageLayout.getPrintTitleRowsOrNullObject();
    pageLayout.load('orientation,zoom,leftMargin,rightMargin,topMargin,bottomMargin');
    area.load('address');
    rows.load('rowIndex,rowCount');
    return { name, pageLayout, area, rows };
  });
  await at.context.sync();
  return kept.map(({ name, pageLayout: was, area, rows }) => {
    const { orientation, zoom } = was;
    const margins = SIDES.map((side) => [side, was[side]] as const);
    const printed = area.isNullObject ? undefined : onItsSheet(area.address);
    const repeated = rows.isNullObject
      ? undefined
      : `$${rows.rowIndex + 1}:$${rows.rowIndex + rows.rowCount}`;
    return step(8, (now: BookAt) => {
      const { pageLayout } = now.sheet(name);
      pageLayout.orientation = orientation;
      pageLayout.zoom = fewer(zoom);
      for (const [side, margin] of margins) pageLayout[side] = margin;
      if (printed !== undefined) pageLayout.setPrintArea(printed);
      if (repeated !== undefined) pageLayout.setPrintTitleRows(repeated);
    });
  });
};
