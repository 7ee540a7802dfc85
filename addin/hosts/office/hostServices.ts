import { calendarDay, guessMeasures } from '../../../taskpane/locality';
import type { HostServices } from '../../../taskpane/services';

import type { ExcelProgram } from './excelProgram';
import { explainSelected } from './explainCell';
import type { OfficeWorkbook } from './officeWorkbook';
import type { RecentCalls } from './recentCalls';
import { watchWorkbook } from './watchWorkbook';

/**
 * What the program offers the pane. It prints and takes back by its own commands, which an add-in cannot call, so the
 * pane offers neither.
 */
export const hostServices = (
  program: ExcelProgram,
  workbook: OfficeWorkbook,
  recent: RecentCalls,
): HostServices => ({
  today: () => calendarDay(new Date()),
  measures: guessMeasures([Office.context.contentLanguage, ...navigator.languages]),
  explain: () => explainSelected(program, recent),
  watch: (listener) => watchWorkbook(program, workbook, listener),
});
