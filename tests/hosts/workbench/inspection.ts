import { WrapStrategy } from '@univerjs/core';

import { chartsOn } from '../../../addin/hosts/workbench/grid/charts';
import { listRuleAt } from '../../../addin/hosts/workbench/grid/listRules';
import { openBook, type Grid } from '../../../addin/hosts/workbench/grid/openGrid';
import { pageOf } from '../../../addin/hosts/workbench/grid/pageSetup';
import { charactersOf } from '../../../addin/hosts/workbench/grid/ranges';
import { sheetNamed } from '../../../addin/hosts/workbench/grid/readBook';

/** What the grid shows and the port does not read back. */
export const inspection = (grid: Grid) => {
  const cell = (sheet: string, row: number, column: number) =>
    openBook(grid).getSheetByName(sheet)!.getRange(row, column);
  const style = (sheet: string, row: number, column: number) =>
    cell(sheet, row, column).getCellStyleData('cell') ?? {};
  return {
    format: (sheet: string, row: number, column: number) => style(sheet, row, column).n?.pattern ?? 'General',
    shows: (sheet: string, row: number, column: number) => cell(sheet, row, column).getDisplayValue(),
    width: (sheet: string, column: number) => charactersOf(sheetNamed(grid, sheet).getColumnWidth(column)),
    look: (sheet: string, row: number, column: number) => {
      const { bl, it, fs, cl, bg, bd, ht } = style(sheet, row, column);
      return JSON.stringify({ bl, it, fs, cl, bg, bd, ht });
    },
    wrapped: (sheet: string, row: number, column: number) =>
      style(sheet, row, column).tb === WrapStrategy.WRAP,
    frozen: (sheet: string) => {
      const { xSplit, ySplit } = sheetNamed(grid, sheet).getConfig().freeze;
      return { rows: ySplit, columns: xSplit };
    },
    list: (name: string, row: number, column: number) => {
      const sheet = sheetNamed(grid, name);
      return listRuleAt(grid, { unitId: sheet.getUnitId(), id: sheet.getSheetId(), name }, row, column);
    },
    note: (sheet: string, row: number, column: number) => cell(sheet, row, column).getNote()?.note,
    charts: (name: string) =>
      chartsOn(grid, sheetNamed(grid, name)).map(({ chart: { id, title, series } }) => ({
        id,
        title,
        series: series.length,
      })),
    page: (name: string) => {
      const page = pageOf(grid, sheetNamed(grid, name).getSheetId());
      return page && { landscape: page.landscape, repeatRows: page.repeatRows, pagesHigh: page.pagesHigh };
    },
  };
};
