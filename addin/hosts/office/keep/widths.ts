import type { BookAt } from '../bookAt';
import { step } from '../write/step';

import type { Aspect } from './aspect';

/** Widths of whole columns, asked for in their first row. */
export const widthAspect: Aspect = {
  load: ({ format }) => {
    format.load('columnWidth');
  },
  putBack: ({ format: { columnWidth } }, area) =>
    columnWidth === null
      ? undefined
      : step(2, (at: BookAt) => {
          at.range(area).format.columnWidth = columnWidth;
        }),
};
