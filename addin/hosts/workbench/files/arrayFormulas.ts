import type { Cell, CellFormulaValue, Worksheet } from '@cj-tech-master/excelts';

import { cellAddress } from '../../../workbook/address';
import type { Area } from '../../../workbook/change';
import type { CellState } from '../../../workbook/port';
import { fileAreas } from './fileAreas';

/* A file keeps the answers of an array formula in the cells that it fills, as if somebody had typed them there. */

/**
 * Tells cell by cell of a sheet, row by row, whether an array formula fills it. Its own cell is not one of those.
 */
export const filledCells = (sheet: string): ((cell: Cell, row: number, column: number) => boolean) => {
  const filled: Area[] = [];
  return ({ value }, row, column) => {
    if (value && typeof value === 'object' && 'shareType' in value && value.shareType === 'array') {
      filled.push(...fileAreas(value.ref, sheet).filter(({ rows, columns }) => rows * columns > 1));
      return false;
    }
    return filled.some(
      (area) =>
        row >= area.row &&
        row < area.row + area.rows &&
        column >= area.column &&
        column < area.column + area.columns,
    );
  };
};

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
