import { installChartSupport } from '@cj-tech-master/excelts/chart';
import type { Workbook } from '@cj-tech-master/excelts';

import { fixedReference } from '../../../workbook/address';
import type { BookParts } from '../grid/bookParts';
import { chartIn, type ChartCells } from '../grid/chartDrawing';

/** Must have run before a file with charts is written. */
export const readyCharts = installChartSupport;

/** Cells that a chart covers, for programs that place it between two corners. */
const COVERED = { rows: 14, columns: 6 };

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
