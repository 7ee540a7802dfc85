import type { CustomData } from '@univerjs/core';

import type { Area } from '../../../workbook/change';

/** How a sheet prints. Row and column numbers are those of the time it was set up. */
export interface PageSetup {
  readonly area: Omit<Area, 'sheet'>;
  readonly landscape: boolean;
  readonly repeatRows: number;
  /** Pages down at most; as many as it takes where it is left out. */
  readonly pagesHigh?: number;
}

export type Pages = Record<string, PageSetup | undefined>;
const PAGES = 'wandcountPages';

export const pagesOf = (custom: CustomData | undefined): Pages =>
  (custom?.[PAGES] as Pages | undefined) ?? {};

/** What a workbook keeps so that its sheets print as they were set up. */
export const withPages = (pages: Pages): Record<string, unknown> => ({ [PAGES]: pages });
