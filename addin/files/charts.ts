import {
  installChartSupport,
  type AxisDataSource,
  type Chart,
  type ChartTypeGroup,
} from '@cj-tech-master/excelts/chart';
import type { Worksheet } from '@cj-tech-master/excelts';

import type { Area } from '../workbook/change';
import { areaOfReference } from '../workbook/references';
import type { FileChart } from './fileBook';

/** Must have run before a file with charts is read. */
export const readyCharts = installChartSupport;

const labelsOf = (source: AxisDataSource | undefined): string | undefined =>
  (source?.strRef ?? source?.numRef)?.formula;

const fileChart = (chart: Chart, sheets: ReadonlySet<string>): FileChart | undefined => {
  const cellsOf = (reference: string | undefined): Area | undefined => {
    const area = reference === undefined ? undefined : areaOfReference(reference);
    return area && sheets.has(area.sheet) ? area : undefined;
  };
  const [group, ...others] = chart.chartTypes as ChartTypeGroup[];
  if (!group || others.length > 0 || (group.type !== 'bar' && group.type !== 'line')) return undefined;
  const labels = cellsOf(labelsOf(group.series[0]?.cat));
  const series = group.series.flatMap(({ tx, val }, index) => {
    const values = cellsOf(val?.numRef?.formula);
    return values
      ? [{ name: tx?.value ?? tx?.strRef?.cache?.points[0]?.value ?? `Series ${index + 1}`, values }]
      : [];
  });
  if (!labels || series.length === 0 || series.length < group.series.length) return undefined;
  const { nativeRow: row, nativeCol: column } = chart.range.tl;
  return { type: group.type, title: chart.title ?? '', row, column, labels, series };
};

/** The bar and line charts of a sheet, and how many charts of other kinds it has. */
export const chartsOn = (
  sheet: Worksheet,
  sheets: ReadonlySet<string>,
): { charts: FileChart[]; unread: number } => {
  const all = sheet.getCharts();
  const charts = all.flatMap((chart) => fileChart(chart, sheets) ?? []);
  return { charts, unread: all.length - charts.length };
};
