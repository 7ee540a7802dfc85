import type { Area, ChartEdit } from '../../../workbook/change';
import type { BookAt } from '../bookAt';

import { step, type Step } from './step';

const ROWS = 16;
const COLUMNS = 6;
const TYPES = { bar: 'ColumnClustered', line: 'LineMarkers' } as const;

/** A chart's name on its sheet, by which its next version takes its place. */
export const chartName = (id: string): string => `Wandcount ${id}`;
/** The names that the new one and the one before it have while both are there. */
export const newChartName = (id: string): string => `Wandcount ${id} (new)`;
export const oldChartName = (id: string): string => `Wandcount ${id} (old)`;

const seriesBy = ({ rows }: Area): 'Rows' | 'Columns' => (rows === 1 ? 'Rows' : 'Columns');

/** Lays a chart over the cells. The finding stands under it in words, for those who cannot see it. */
export const layChart = (edit: ChartEdit): Step =>
  step(16 + 6 * edit.series.length, (at: BookAt) => {
    const { sheet: name, row, column, labels, series } = edit;
    const [first, ...others] = series;
    if (!first) return;
    const sheet = at.sheet(name);
    const chart = sheet.charts.add(TYPES[edit.type], at.range(first.values), seriesBy(first.values));
    chart.name = newChartName(edit.id);
    chart.setPosition(
      sheet.getRangeByIndexes(row, column, 1, 1),
      sheet.getRangeByIndexes(row + ROWS - 1, column + COLUMNS - 1, 1, 1),
    );
    chart.title.text = edit.title;
    chart.axes.categoryAxis.title.text = edit.finding;
    chart.legend.visible = series.length > 1;
    const drawn = [chart.series.getItemAt(0), ...others.map(({ name: words }) => chart.series.add(words))];
    series.forEach(({ name: words, values }, index) => {
      const one = drawn[index]!;
      one.name = words;
      if (index > 0) one.setValues(at.range(values));
      one.setXAxisValues(at.range(labels));
    });
  });

/**
 * Puts the new chart in the place of the old one. Deleting that is the last thing done, because a deleted chart does
 * not come back.
 */
export const replaceChart = ({ sheet, id }: ChartEdit, hasOld: boolean): Step =>
  step(5, (at: BookAt) => {
    const { charts } = at.sheet(sheet);
    const old = hasOld ? charts.getItem(chartName(id)) : undefined;
    if (old) old.name = oldChartName(id);
    charts.getItem(newChartName(id)).name = chartName(id);
    old?.delete();
  });
