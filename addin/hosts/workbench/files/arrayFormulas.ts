import type { CellFormulaValue, Worksheet } from '@cj-tech-master/excelts';

import { cellAddress } from '../../../workbook/address';
import type { Area } from '../../../workbook/change';
import type { CellState } from '../../../workbook/port';

/** What an array formula fills, its own cell first. */
export interface Fills {
  readonly area: Area;
  readonly cells: readonly (readonly CellState[])[];
}

/** Writes an array formula over the cells that it fills, with its answers. */
export const writeArray = (sheet: Worksheet, value: CellFormulaValue, { area, cells }: Fills): void => {
  const last = cellAddress(area.row + area.rows - 1, area.column + area.columns - 1);
  cells.forEach((line, down) =>
    line.forEach(({ value: answer, error }, across) => {
      const cell = sheet.getCell(area.row + down + 1, area.column + across + 1);
      if (down === 0 && across === 0)
        cell.value = { ...value, shareType: 'array', ref: `${cellAddress(area.row, area.column)}:${last}` };
      else cell.value = error === undefined ? answer : { error: error as '#N/A' };
    }),
  );
};
