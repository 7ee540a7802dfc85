import { installChartSupport } from '@cj-tech-master/excelts/chart';
import type { Workbook } from '@cj-tech-master/excelts';

import type { FileChart } from '../../../files/fileBook';
import { fixedReference } from '../../../workbook/address';
import type { Area } from '../../../workbook/change';
import type { SheetData } from '../grid/bookData';
import type { BookParts, KeptDrawing } from '../grid/bookParts';
import { chartDrawing, chartIn, fileChartId, type ChartCells } from '../grid/chartDrawing';

/** Must have run before a file with charts is written. */
export const readyCharts = installChartSupport;

/** Rows and columns that nobody sized, pixels. */
const ROW_HEIGHT = 24;
const COLUMN_WIDTH = 88;
/** Cells that a chart covers, for programs that place it between two corners. */
const COVERED = { rows: 14, columns: 6 };

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

/** Adds the charts of a workbook to its file, as charts that other programs draw themselves. */
export const addCharts = (
  file: Workbook,
  sheets: readonly { readonly id: string; readonly name: string }[],
  { drawings }: BookParts,
): void => {
  const nameOf = (id: string): string | undefined => sheets.find((sheet) => sheet.id === id)?.name;
  const reference = ({ sheetId, ...cells }: ChartCells): string | undefined => {
    const sheet = nameOf(sheetId);
    return sheet && fixedReference({ sheet, ...cells });
  };
  for (const [sheetId, list] of Object.entries(drawings))
    for (const drawing of list) {
      const chart = chartIn(drawing);
      const sheet = file.getWorksheet(nameOf(sheetId));
      const labels = chart && reference(chart.labels);
      const series = (chart?.series ?? []).flatMap(({ name, values }) => {
        const cells = reference(values);
        return cells && labels ? [{ name, values: cells, categories: { strRef: { formula: labels } } }] : [];
      });
      if (!chart || !sheet || series.length === 0) continue;
      const { row, column } = (drawing['sheetTransform'] as { from: { row: number; column: number } }).from;
      sheet.addChart(
        {
          type: chart.type,
          ...(chart.type === 'bar' ? { barDir: 'col' as const } : {}),
          title: chart.title,
          series,
          showLegend: series.length > 1,
        },
        {
          tl: { col: column, row },
          br: { col: column + COVERED.columns, row: row + COVERED.rows },
        },
      );
    }
};
