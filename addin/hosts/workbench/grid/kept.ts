import type {
  BooleanNumber,
  CellValueType,
  DataValidationErrorStyle,
  DataValidationRenderMode,
  DrawingTypeEnum,
  LocaleType,
  WrapStrategy,
} from '@univerjs/core';

/* What the grid's own data say by number: the page reads a workbook before it has the grid. */

export const STRING = 1 as CellValueType.STRING;
export const NUMBER = 2 as CellValueType.NUMBER;
export const BOOLEAN = 3 as CellValueType.BOOLEAN;
export const FORCE_STRING = 4 as CellValueType.FORCE_STRING;
export const ENGLISH = 'enUS' as LocaleType.EN_US;
export const NO = 0 as BooleanNumber.FALSE;
export const YES = 1 as BooleanNumber.TRUE;
export const WRAPPED = 3 as WrapStrategy.WRAP;
export const OVER_CELLS = 8 as DrawingTypeEnum.DRAWING_DOM;
export const ARROW = 1 as DataValidationRenderMode.ARROW;
/** How strict a rule on entries is, by the words of files. */
export const STRICTNESS = {
  information: 0 as DataValidationErrorStyle.INFO,
  stop: 1 as DataValidationErrorStyle.STOP,
  warning: 2 as DataValidationErrorStyle.WARNING,
} as const;
/** The sheet of a name that holds in every sheet. */
export const WHOLE_BOOK = 'AllDefaultWorkbook';
