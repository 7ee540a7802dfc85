import type { CellValueType, LocaleType } from '@univerjs/core';

/* What the grid's own data say by number: the page reads a workbook before it has the grid. */

export const STRING = 1 as CellValueType.STRING;
export const NUMBER = 2 as CellValueType.NUMBER;
export const BOOLEAN = 3 as CellValueType.BOOLEAN;
export const FORCE_STRING = 4 as CellValueType.FORCE_STRING;
export const ENGLISH = 'enUS' as LocaleType.EN_US;
