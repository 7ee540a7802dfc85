import type { Area, ChartEdit } from '../../../workbook/change';
import { freshId } from './bookData';
import type { KeptDrawing } from './bookParts';
import { OVER_CELLS } from './kept';

/** The component that draws a chart over the cells. */
export const CHART_COMPONENT = 'wandcount-chart';

/** Size of a chart over the cells, pixels. */
const WIDTH = 540;
const HEIGHT = 320;
/** Room that the grid's own headings take, pixels. */
const HEADINGS = { left: 46, top: 20 };

/** Cells of a chart; by the sheet's id, which a user's new name for the sheet does not change. */
export type ChartCells = Omit<Area, 'sheet'> & { readonly sheetId: string };

/** What is kept of a chart with the workbook. */
export interface KeptChart extends Pick<ChartEdit, 'id' | 'type' | 'title' | 'finding'> {
  readonly labels: ChartCells;
  readonly series: readonly { readonly name: string; readonly values: ChartCells }[];
}

/** A file keeps no id of a chart; its title stands in for it. */
export const fileChartId = (title: string): string => `file: ${title}`;

/** Rows and columns of the sheet that a chart lies on; sizes in pixels. */
export interface SheetSizes {
  readonly rows: number;
  readonly columns: number;
  rowHeight(row: number): number;
  columnWidth(column: number): number;
}

/** Which line of a row or column of sizes lies `length` pixels past the start of `from`, and how far into it. */
const lineAt = (
  from: number,
  length: number,
  count: number,
  size: (line: number) => number,
): { line: number; offset: number } => {
  let rest = length;
  for (let line = from; line < count; line++) {
    if (rest < size(line)) return { line, offset: rest };
    rest -= size(line);
  }
  return { line: count - 1, offset: Math.max(0, size(count - 1) - 1) };
};

const before = (line: number, size: (line: number) => number): number =>
  Array.from({ length: line }, (_, index) => size(index)).reduce((sum, one) => sum + one, 0);

/** A chart as the grid keeps what lies over its cells, with its left upper corner at a cell. */
export const chartDrawing = (
  place: {
    readonly unitId: string;
    readonly subUnitId: string;
    readonly row: number;
    readonly column: number;
  },
  chart: KeptChart,
  sizes: SheetSizes,
): KeptDrawing => {
  const { unitId, subUnitId, row, column } = place;
  const right = lineAt(column, WIDTH, sizes.columns, (line) => sizes.columnWidth(line));
  const bottom = lineAt(row, HEIGHT, sizes.rows, (line) => sizes.rowHeight(line));
  const sheetTransform = {
    from: { column, columnOffset: 0, row, rowOffset: 0 },
    to: { column: right.line, columnOffset: right.offset, row: bottom.line, rowOffset: bottom.offset },
  };
  return {
    unitId,
    subUnitId,
    drawingId: freshId('chart'),
    drawingType: OVER_CELLS,
    componentKey: CHART_COMPONENT,
    sheetTransform,
    axisAlignSheetTransform: sheetTransform,
    transform: {
      left: HEADINGS.left + before(column, (line) => sizes.columnWidth(line)),
      top: HEADINGS.top + before(row, (line) => sizes.rowHeight(line)),
      width: WIDTH,
      height: HEIGHT,
    },
    data: chart,
    allowTransform: true,
  };
};

/** The chart in something that lies over the cells; undefined for anything else. */
export const chartIn = (drawing: Pick<KeptDrawing, 'drawingId'>): KeptChart | undefined => {
  const { componentKey, data } = drawing as KeptDrawing;
  return componentKey === CHART_COMPONENT ? (data as KeptChart) : undefined;
};
