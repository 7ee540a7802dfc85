import type { SelectedCell } from '../../../taskpane/services';

import type { ExcelProgram } from './excelProgram';
import { isFormula } from './read/cellState';

/** The selected cell; undefined where it holds no formula. */
export const selectedCell = (program: ExcelProgram): Promise<SelectedCell | undefined> =>
  program.run(
    async (context) => {
      const cell = context.workbook.getActiveCell();
      cell.load('rowIndex,columnIndex,formulas,values,text');
      const { worksheet } = cell;
      worksheet.load('name');
      await context.sync();
      if (!isFormula(cell.formulas[0]?.[0], cell.values[0]?.[0])) return undefined;
      const shows = (cell.text[0]?.[0] ?? '').trim();
      return { sheet: worksheet.name, row: cell.rowIndex, column: cell.columnIndex, shows };
    },
    { waitForCell: true },
  );
