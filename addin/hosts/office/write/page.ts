import { PAGE_MARGIN, type Edit } from '../../../workbook/change';
import type { BookAt } from '../bookAt';

import { step, type Step } from './step';

type Page = Extract<Edit, { kind: 'page' }>;

const POINTS_A_MILLIMETRE = 72 / 25.4;
export const SIDES = ['leftMargin', 'rightMargin', 'topMargin', 'bottomMargin'] as const;

/** How the sheet prints: one page wide, and as many high as it takes or may. */
export const setPage = ({ area, landscape, repeatRows, pagesHigh }: Page): Step =>
  step(8, (at: BookAt) => {
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
