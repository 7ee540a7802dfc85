import { DrawingTypeEnum, type Worksheet } from '@univerjs/core';
import {
  InsertSheetDrawingCommand,
  ISheetDrawingService,
  RemoveSheetDrawingCommand,
} from '@univerjs/preset-sheets-drawing';

import type { Area, ChartEdit } from '../../../workbook/change';
import { WorkbookError } from '../../../workbook/port';
import type { Chart } from '../../../../taskpane/view';
import { chartDrawing, chartIn, fileChartId, type ChartCells, type KeptChart } from './chartDrawing';
import { inside, openBook, type Grid } from './openGrid';
import { sheetNamed } from './readBook';

const kept = (grid: Grid, edit: ChartEdit): KeptChart => {
  const cells = ({ sheet, ...rest }: Area): ChartCells => ({
    ...rest,
    sheetId: sheetNamed(grid, sheet).getSheetId(),
  });
  const { id, type, title, finding } = edit;
  return {
    id,
    type,
    title,
    finding,
    labels: cells(edit.labels),
    series: edit.series.map(({ name, values }) => ({ name, values: cells(values) })),
  };
};

/** The charts of a sheet, with what is kept of them. */
export const chartsOn = (
  grid: Grid,
  sheet: Worksheet,
): { readonly drawingId: string; readonly chart: KeptChart }[] =>
  Object.values(
    inside(grid).get(ISheetDrawingService).getDrawingData(sheet.getUnitId(), sheet.getSheetId()) ?? {},
  ).flatMap((drawing) => {
    const chart = chartIn(drawing);
    return chart ? [{ drawingId: drawing.drawingId, chart }] : [];
  });

/** Lays a chart over the cells; it takes the place of a chart of the same id. */
export const placeChart = (grid: Grid, sheet: Worksheet, edit: ChartEdit): void => {
  const place = { unitId: sheet.getUnitId(), subUnitId: sheet.getSheetId() };
  const run = (command: string, drawings: object[]): void => {
    if (!grid.commands.syncExecuteCommand(command, { unitId: place.unitId, drawings }))
      throw new WorkbookError('The workbook did not take a chart.');
  };
  const old = chartsOn(grid, sheet).filter(
    ({ chart }) => chart.id === edit.id || chart.id === fileChartId(edit.title),
  );
  if (old.length > 0)
    run(
      RemoveSheetDrawingCommand.id,
      old.map(({ drawingId }) => ({ ...place, drawingId, drawingType: DrawingTypeEnum.DRAWING_DOM })),
    );
  run(InsertSheetDrawingCommand.id, [
    chartDrawing({ ...place, row: edit.row, column: edit.column }, kept(grid, edit), {
      rows: sheet.getRowCount(),
      columns: sheet.getColumnCount(),
      rowHeight: (row) => sheet.getRowHeight(row),
      columnWidth: (column) => sheet.getColumnWidth(column),
    }),
  ]);
};

const rangeFor = (grid: Grid, { sheetId, row, column, rows, columns }: ChartCells) =>
  openBook(grid).getSheetBySheetId(sheetId)?.getRange(row, column, rows, columns);

/** A chart with the numbers that its cells hold now; a cell without a number is a gap. */
export const chartNow = (grid: Grid, { id, type, title, finding, labels, series }: KeptChart): Chart => ({
  id,
  type,
  title,
  finding,
  labels: (rangeFor(grid, labels)?.getDisplayValues() ?? []).flat().map((label) => label.trim()),
  series: series.map(({ name, values }) => ({
    name,
    unit: '',
    values: (rangeFor(grid, values)?.getRawValues() ?? [])
      .flat()
      .map((value) => (typeof value === 'number' ? value : Number.NaN)),
  })),
});
