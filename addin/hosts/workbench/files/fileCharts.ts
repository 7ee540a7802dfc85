import type { AxisDataSource, Chart, ChartTypeGroup } from '@cj-tech-master/excelts/chart';
import { installChartSupport } from '@cj-tech-master/excelts/chart';
import type { Workbook } from '@cj-tech-master/excelts';

import { fixedReference } from '../../../workbook/address';
import type { SheetData } from '../grid/bookData';
import type { BookParts, KeptDrawing } from '../grid/bookParts';
import { chartDrawing, chartIn, fileChartId, type ChartCells, type KeptChart } from '../grid/chartDrawing';
import { areaOfReference } from '../../../workbook/references';

/** Must have run before a file with charts is read or written. */
export const readyCharts = installChartSupport;

/** Rows and columns that nobody sized, pixels. */
const ROW_HEIGHT = 24;
const COLUMN_WIDTH = 88;
/** Cells that a chart covers, for programs that place it between two corners. */
const COVERED = { rows: 14, columns: 6 };

type IdOf = (sheet: string) => string | undefined;

const cellsOf = (reference: string | undefined, idOf: IdOf): ChartCells | undefined => {
  const area = reference === undefined ? undefined : areaOfReference(reference);
  const sheetId = area && idOf(area.sheet);
  if (!area || sheetId === undefined) return undefined;
  const { row, column, rows, columns } = area;
  return { sheetId, row, column, rows, columns };
};

const labelsOf = (source: AxisDataSource | undefined): string | undefined =>
  (source?.strRef ?? source?.numRef)?.formula;

const keptChart = (chart: Chart, idOf: IdOf): KeptChart | undefined => {
  const [group, ...others] = chart.chartTypes as ChartTypeGroup[];
  if (!group || others.length > 0 || (group.type !== 'bar' && group.type !== 'line')) return undefined;
  const labels = cellsOf(labelsOf(group.series[0]?.cat), idOf);
  const series = group.series.flatMap(({ tx, val }, index) => {
    const values = cellsOf(val?.numRef?.formula, idOf);
    return values
      ? [{ name: tx?.value ?? tx?.strRef?.cache?.points[0]?.value ?? `Series ${index + 1}`, values }]
      : [];
  });
  if (!labels || series.length === 0 || series.length < group.series.length) return undefined;
  const title = chart.title ?? '';
  return { id: fileChartId(title), type: group.type, title, finding: '', labels, series };
};

/** The bar and line charts of a file, by sheet id, and how many charts of other kinds it has. */
export const drawingsIn = (
  file: Workbook,
  sheets: readonly SheetData[],
  unitId: string,
): { drawings: Record<string, KeptDrawing[]>; unread: number } => {
  const idOf: IdOf = (name) => sheets.find((sheet) => sheet.name === name)?.id;
  let unread = 0;
  const drawings: Record<string, KeptDrawing[]> = {};
  for (const sheet of file.worksheets) {
    const data = sheets.find(({ name }) => name === sheet.name);
    for (const chart of data ? sheet.getCharts() : []) {
      const kept = keptChart(chart, idOf);
      if (!kept || !data) {
        unread += 1;
        continue;
      }
      const { nativeRow: row, nativeCol: column } = chart.range.tl;
      (drawings[data.id] ??= []).push(
        chartDrawing({ unitId, subUnitId: data.id, row, column }, kept, {
          rows: data.rowCount ?? row + 1,
          columns: data.columnCount ?? column + 1,
          rowHeight: (line) => data.rowData?.[line]?.h ?? ROW_HEIGHT,
          columnWidth: (line) => data.columnData?.[line]?.w ?? COLUMN_WIDTH,
        }),
      );
    }
  }
  return { drawings, unread };
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
