import type { Cell } from '@cj-tech-master/excelts';

import type { Area } from '../workbook/change';
import { fileAreas } from './fileAreas';

/**
 * Tells cell by cell of a sheet, row by row, whether an array formula fills it: a file keeps its answers as if somebody
 * had typed them there. Its own cell is not one of those.
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
