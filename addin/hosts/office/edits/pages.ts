import { only, PAGE_MARGIN, type Edit } from '../../../workbook/change';
import type { BookAt } from '../bookAt';

import { byPiece, given, type Prepare } from './prepared';
import { piece, type Piece } from './piece';

const POINTS_A_MILLIMETRE = 72 / 25.4;
const SIDES = ['leftMargin', 'rightMargin', 'topMargin', 'bottomMargin'] as const;
const CALLS = 8;

/** One page wide, and as many high as it takes or may. */
const setPage = ({ area, landscape, repeatRows, pagesHigh }: Extract<Edit, { kind: 'page' }>): Piece =>
  piece(CALLS, (at) => {
    const { pageLayout } = at.sheet(area.sheet);
    pageLayout.orientation = landscape ? 'Landscape' : 'Portrait';
    for (const side of SIDES) pageLayout[side] = PAGE_MARGIN * POINTS_A_MILLIMETRE;
    pageLayout.zoom = {
      horizontalFitToPages: 1,
      ...(pagesHigh === undefined ? {} : { verticalFitToPages: pagesHigh }),
    };
    pageLayout.setPrintArea(at.range(area));
    if (repeatRows > 0) pageLayout.setPrintTitleRows(`$${area.row + 1}:$${area.row + repeatRows}`);
  });

const CELLS = /(?:'(?:[^']|'')*'|[^',!]*)!(\$?[A-Z]+\$?\d+(?::\$?[A-Z]+\$?\d+)?)/gi;

/** "A1:C9,E1" of "'Round card'!A1:C9,'Round card'!E1". */
const onItsSheet = (address: string): string =>
  [...address.matchAll(CELLS)].map(([, cells]) => cells).join(',');

/** A print area that was not there before is not taken off again. */
const pagesBefore = async (at: BookAt, sheets: readonly string[]): Promise<Piece[]> => {
  if (sheets.length === 0) return [];
  const told = sheets.map((name) => {
    const { pageLayout } = at.sheet(name);
    const area = pageLayout.getPrintAreaOrNullObject();
    const rows = pageLayout.getPrintTitleRowsOrNullObject();
    pageLayout.load('orientation,zoom,leftMargin,rightMargin,topMargin,bottomMargin');
    area.load('address');
    rows.load('rowIndex,rowCount');
    return { name, pageLayout, area, rows };
  });
  await at.context.sync();
  return told.map(({ name, pageLayout: was, area, rows }) => {
    const { orientation, zoom } = was;
    const margins = SIDES.map((side) => [side, was[side]] as const);
    const printed = area.isNullObject ? undefined : onItsSheet(area.address);
    const repeated = rows.isNullObject
      ? undefined
      : `$${rows.rowIndex + 1}:$${rows.rowIndex + rows.rowCount}`;
    return piece(CALLS, (now) => {
      const { pageLayout } = now.sheet(name);
      pageLayout.orientation = orientation;
      pageLayout.zoom = given(zoom);
      for (const [side, margin] of margins) pageLayout[side] = margin;
      if (printed !== undefined) pageLayout.setPrintArea(printed);
      if (repeated !== undefined) pageLayout.setPrintTitleRows(repeated);
    });
  });
};

/** How sheets print. */
export const preparePages: Prepare = async ({ at, edits, over }) => {
  const sheets = new Set(only(over, 'page').map(({ area }) => area.sheet));
  const before = await pagesBefore(at, [...sheets]);
  return { pieces: only(edits, 'page').map(setPage), putBack: before.map(byPiece) };
};
