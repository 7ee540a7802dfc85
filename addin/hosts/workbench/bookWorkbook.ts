import type { ICellData } from '@univerjs/core';

import type { Area } from '../../workbook/change';
import {
  WorkbookError,
  type Block,
  type CellState,
  type Outline,
  type SheetOutline,
  type Workbook,
} from '../../workbook/port';
import { areaOfReference } from '../../workbook/references';
import { areasWanted } from '../../workbook/seen';
import { validateAreas } from '../../workbook/validateChange';
import type { BookData, SheetData } from './grid/bookData';
import { partsOf } from './grid/bookParts';
import { cellState, isBlank } from './grid/cells';

type Cells = Readonly<Record<number, Readonly<Record<number, ICellData>>>>;

const EMPTY: CellState = { value: null };

const cellsOf = ({ cellData }: SheetData): Cells => (cellData ?? {}) as Cells;

const sheetOutline = (sheet: SheetData): SheetOutline => {
  let [rows, columns] = [0, 0];
  for (const [row, line] of Object.entries(cellsOf(sheet)))
    for (const [column, cell] of Object.entries(line))
      if (!isBlank(cell)) {
        rows = Math.max(rows, Number(row) + 1);
        columns = Math.max(columns, Number(column) + 1);
      }
  const merges = (sheet.mergeData ?? []).map(({ startRow, endRow, startColumn, endColumn }): Area => ({
    sheet: sheet.name,
    row: startRow,
    column: startColumn,
    rows: endRow - startRow + 1,
    columns: endColumn - startColumn + 1,
  }));
  return { name: sheet.name, rows, columns, merges };
};

export interface BookWorkbook extends Workbook {
  /** True where a formula has no result in the file. */
  readonly unworked: boolean;
}

/**
 * A workbook as it was read from its file, before the grid has it: it can be read, with the results that formulas had
 * in the file, and not written.
 */
export const bookWorkbook = (book: BookData, active: string): BookWorkbook => {
  const sheets = book.sheetOrder.map((id) => book.sheets[id] as SheetData);
  const byName = new Map(sheets.map((sheet) => [sheet.name, sheet]));
  const names: Record<string, Area> = {};
  for (const { name, formulaOrRefString } of partsOf(book).names) {
    const area = areaOfReference(formulaOrRefString);
    if (area && byName.has(area.sheet)) names[name] = area;
  }
  const outline: Outline = {
    sheets: sheets.map(sheetOutline),
    names,
    active: byName.has(active) ? active : (sheets[0]?.name ?? ''),
  };
  const blockOf = (area: Area): Block => {
    const cells = cellsOf(byName.get(area.sheet)!);
    const state = (row: number, column: number): CellState => {
      const cell = cells[row]?.[column];
      return cell && !isBlank(cell) ? cellState(cell, cell.f ?? undefined) : EMPTY;
    };
    return {
      area,
      cells: Array.from({ length: area.rows }, (_row, down) =>
        Array.from({ length: area.columns }, (_column, across) =>
          state(area.row + down, area.column + across),
        ),
      ),
    };
  };
  return {
    unworked: sheets.some((sheet) =>
      Object.values(cellsOf(sheet)).some((line) =>
        Object.values(line).some(({ f, v }) => f && (v === undefined || v === null)),
      ),
    ),
    outline: () => Promise.resolve(outline),
    read: (wanted) => {
      const areas = areasWanted(wanted, outline);
      validateAreas(areas, outline);
      return Promise.resolve({ ...outline, blocks: areas.map(blockOf) });
    },
    apply: () => Promise.reject(new WorkbookError('The sheets are not there yet. Nothing was written.')),
  };
};
