import { calendarDay, guessMeasures } from '../../../taskpane/locality';
import type { HostServices } from '../../../taskpane/services';

import { keptLook } from './documentSettings';
import type { ExcelProgram } from './excelProgram';
import type { OfficeWorkbook } from './officeWorkbook';
import { selectedCell } from './selectedCell';
import { watchWorkbook } from './watchWorkbook';

/**
 * What the program offers the pane. It prints and takes back by its own commands, which an add-in cannot call, so the
 * pane has no button for either and says where to print.
 */
export const hostServices = (program: ExcelProgram, workbook: OfficeWorkbook): HostServices => {
  const look = keptLook(Office.context.document.settings);
  return {
    today: () => calendarDay(new Date()),
    measures: guessMeasures([Office.context.contentLanguage, ...navigator.languages]),
    howToPrint: 'To print the card, go to its sheet and choose File, then Print.',
    selected: () => selectedCell(program),
    watch: (listener) => watchWorkbook(program, workbook, listener),
    keptLook: look.recall(),
    keepLook: look.keep,
  };
};
