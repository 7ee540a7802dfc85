import { DrawingTypeEnum, type Worksheet } from '@univerjs/core';
import { InsertSheetDrawingCommand, ISheetDrawingService, RemoveSheetDrawingCommand } from '@univerjs/preset-sheets-drawing';

import type { Area, ChartEdit } from '../../../workbook/change';
import { WorkbookError } from '../../../workbook/port';
import type { Chart } from '../../../../taskpane/view';
import { freshId } from './bookData';
import { inside, openBook, type Grid } from './openGrid';
import { sheetNamed } from './readBook';

/** The component that draws a chart over the cells. */
export const CHART_COMPONENT = 'wandcount-chart';

/** Size of a chart over the cells, pixels. */
const WIDTH = 540;
const HEIGHT = 320;
/** Room that the grid's own headings take, pixels. */
const HEADINGS = { left: 46, top: 20 };

/** Cells of a chart; by the sheet's id, which a user's new name for the sheet does not change. */
type Cells = Omit<Area, 'sheet'> & { readonly sheetId: string };

/** What is kept of a chart with the workbook. */
export interface KeptChart extends Pick<ChartEdit, 'id' | 'type' | 'title' | 'finding'> {
  readonly labels: Cells;
  readonly series: readonly { readonly name: string; readonly values: Cells }[];
}

const kept = (grid: Grid, edit: ChartEdit): KeptChart => {
  const cells = ({ sheet, ...rest }: Area): Cells => ({ ...rest, sheetId: sheetNamed(grid, sheet).getSheetId() });
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

/** Which line of a row or column of sizes lies `length` pixels past the start of `from`, and how far into it. */
const lineAt = (from: number, length: number, count: number, size: (line: number) => number): { line: number; offset: number } => {
  let rest = length;
  for (let line = from; line < count; line++) {
    if (rest < size(line)) return { line, offset: rest };
    rest -= size(line);
  }
  return { line: count - 1, offset: Math.max(0, size(count - 1) - 1) };
};

const before = (line: number, size: (line: number) => number): number =>
  Array.from({ length: line }, (_, index) => size(index)).reduce((sum, one) => sum + one, 0);

const drawings = (grid: Grid, sheet: Worksheet) =>
  Object.values(inside(grid).get(ISheetDrawingService).getDrawingData(sheet.getUnitId(), sheet.getSheetId()) ?? {});

/** The charts of a sheet, with what is kept of them. */
export const chartsOn = (grid: Grid, sheet: Worksheet): { readonly drawingId: string; readonly chart: KeptChart }[] =>
  drawings(grid, sheet)
    .filter((drawing) => drawing.drawingType === DrawingTypeEnum.DRAWING_DOM)
    .map((drawing) => ({ drawingId: drawing.drawingId, chart: (drawing as unknown as { data: KeptChart }).data }));

/** Lays a chart over the cells; it takes the place of a chart of the same id. */
export const placeChart = (grid: Grid, sheet: Worksheet, edit: ChartEdit): void => {
  const unitId = sheet.getUnitId();
  const subUnitId = sheet.getSheetId();
  const run = (command: string, list: object[]): void => {
    if (!grid.commands.syncExecuteCommand(command, { unitId, drawings: list }))
      throw new WorkbookError('The workbook did not take a chart.');
  };
  const old = chartsOn(grid, sheet).filter(({ chart }) => chart.id === edit.id);
  if (old.length > 0)
    run(
      RemoveSheetDrawingCommand.id,
      old.map(({ drawingId }) => ({ unitId, subUnitId, drawingId, drawingType: DrawingTypeEnum.DRAWING_DOM })),
    );
  const columnWidth = (column: number): number => sheet.getColumnWidth(column);
  const rowHeight = (row: number): number => sheet.getRowHeight(row);
  const right = lineAt(edit.column, WIDTH, sheet.getColumnCount(), columnWidth);
  const bottom = lineAt(edit.row, HEIGHT, sheet.getRowCount(), rowHeight);
  const sheetTransform = {
    from: { column: edit.column, columnOffset: 0, row: edit.row, rowOffset: 0 },
    to: { column: right.line, columnOffset: right.offset, row: bottom.line, rowOffset: bottom.offset },
  };
  run(InsertSheetDrawingCommand.id, [
    {
      unitId,
      subUnitId,
      drawingId: freshId('chart'),
      drawingType: DrawingTypeEnum.DRAWING_DOM,
      componentKey: CHART_COMPONENT,
      sheetTransform,
      axisAlignSheetTransform: sheetTransform,
      transform: {
        left: HEADINGS.left + before(edit.column, columnWidth),
        top: HEADINGS.top + before(edit.row, rowHeight),
        width: WIDTH,
        height: HEIGHT,
      },
      data: kept(grid, edit),
      allowTransform: true,
    },
  ]);
};

const shown = (grid: Grid, { sheetId, row, column, rows, columns }: Cells): string[] =>
  openBook(grid).getSheetBySheetId(sheetId)?.getRange(row, column, rows, columns).getDisplayValues().flat() ?? [];

const numbers = (grid: Grid, { sheetId, row, column, rows, columns }: Cells): number[] =>
  (openBook(grid).getSheetBySheetId(sheetId)?.getRange(row, column, rows, columns).getValues() ?? [])
    .flat()
    .map((value) => (typeof value === 'number' ? value : Number.NaN));

/** A chart with the numbers that its cells hold now; a cell without a number is a gap. */
export const chartNow = (grid: Grid, { id, type, title, finding, labels, series }: KeptChart): Chart => ({
  id,
  type,
  title,
  finding,
  labels: shown(grid, labels).map((label) => label.trim()),
  series: series.map(({ name, values }) => ({ name, unit: '', values: numbers(grid, values) })),
});
