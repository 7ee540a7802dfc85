import type { Edit } from '../../../workbook/change';
import type { BookAt } from '../bookAt';

import { step, type Step } from './step';

type Page = Extract<Edit, { kind: 'page' }>;

/** How the sheet prints: one page wide, as many high as it takes. */
export const setPage = ({ area, landscape, repeatRows }: Page): Step =>
  step(8, (at: BookAt) => {
    const { pageLayout } = at.sheet(area.sheet);
    pageLayout.orientation = landscape ? 'Landscape' : 'Portrait';
    pageLayout.zoom = { horizontalFitToPages: 1 };
    pageLayout.setPrintArea(at.range(area));
    if (repeatRows > 0) pageLayout.setPrintTitleRows(`$${area.row + 1}:$${area.row + repeatRows}`);
  });
