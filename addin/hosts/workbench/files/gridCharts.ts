import type { FileChart } from '../../../files/fileBook';
import type { Area } from '../../../workbook/change';
import type { SheetData } from '../grid/bookData';
import type { KeptDrawing } from '../grid/bookParts';
import { chartDrawing, fileChartId, type ChartCells } from '../grid/chartDrawing';

/** Rows and columns that nobody sized, pixels. */
const ROW_HEIGHT = 24;
const COLUMN_WIDTH = 88;
/** The charts of a file, by sheet id. */
export const drawingsOf = (
  sheets: readonly { readonly data: SheetData; readonly charts: readonly FileChart[] }[],
  unitId: string,
): Record<string, KeptDrawing[]> => {
  const cellsOf = ({ sheet, ...cells }: Area): ChartCells => ({
    sheetId: sheets.find(({ data }) => data.name === sheet)!.data.id,
    ...cells,
  });
  const drawing = (data: SheetData, { labels, series, row, column, ...chart }: FileChart): KeptDrawing =>
    chartDrawing(
      { unitId, subUnitId: data.id, row, column },
      {
        id: fileChartId(chart.title),
        ...chart,
        finding: '',
        labels: cellsOf(labels),
        series: series.map(({ name, values }) => ({ name, values: cellsOf(values) })),
      },
      {
        rows: data.rowCount ?? row + 1,
        columns: data.columnCount ?? column + 1,
        rowHeight: (line) => data.rowData?.[line]?.h ?? ROW_HEIGHT,
        columnWidth: (line) => data.columnData?.[line]?.w ?? COLUMN_WIDTH,
      },
    );
  return Object.fromEntries(
    sheets.flatMap(({ data, charts }) =>
      charts.length === 0 ? [] : [[data.id, charts.map((chart) => drawing(data, chart))]],
    ),
  );
};
