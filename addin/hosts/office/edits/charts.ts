import { only, type Area, type ChartEdit } from '../../../workbook/change';
import type { BookAt } from '../bookAt';

import type { Prepare, PutBack } from './prepared';
import { piece, type Piece } from './piece';

const ROWS = 16;
const COLUMNS = 6;
const TYPES = { bar: 'ColumnClustered', line: 'LineMarkers' } as const;

/** A chart's name on its sheet, by which its next version takes its place. */
const chartName = (id: string): string => `Wandcount ${id}`;
/** The names that the new one and the one before it have while both are there. */
const newChartName = (id: string): string => `Wandcount ${id} (new)`;
const oldChartName = (id: string): string => `Wandcount ${id} (old)`;

const seriesBy = ({ rows }: Area): 'Rows' | 'Columns' => (rows === 1 ? 'Rows' : 'Columns');

/** Lays a chart over the cells. The finding stands under it in words, for those who cannot see it. */
const layChart = (edit: ChartEdit): Piece =>
  piece(16 + 6 * edit.series.length, (at) => {
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
const replaceChart = ({ sheet, id }: ChartEdit, hasOld: boolean): Piece =>
  piece(5, (at) => {
    const { charts } = at.sheet(sheet);
    const old = hasOld ? charts.getItem(chartName(id)) : undefined;
    if (old) old.name = oldChartName(id);
    charts.getItem(newChartName(id)).name = chartName(id);
    old?.delete();
  });

const namesOn = async (at: BookAt, sheets: readonly string[]): Promise<Map<string, readonly string[]>> => {
  const lists = sheets.map((sheet) => {
    const { charts } = at.sheet(sheet);
    charts.load('items/name');
    return { sheet, charts };
  });
  await at.context.sync();
  return new Map(lists.map(({ sheet, charts }) => [sheet, charts.items.map(({ name }) => name)]));
};

/**
 * Takes away the charts that were not there, half made ones too, and gives those that were their names back.
 *
 * @throws Error where one that was there is gone
 */
const putBackOn =
  (sheet: string, ids: readonly string[], before: readonly string[]): PutBack =>
  async (at) => {
    const now = (await namesOn(at, [sheet])).get(sheet) ?? [];
    const { charts } = at.sheet(sheet);
    const old = ids.filter((id) => before.includes(chartName(id)));
    const aside = old.filter((id) => now.includes(oldChartName(id)));
    const added = now.filter(
      (name) =>
        (!before.includes(name) && !aside.some((id) => name === oldChartName(id))) ||
        aside.some((id) => name === chartName(id)),
    );
    for (const name of added) charts.getItem(name).delete();
    for (const id of aside) charts.getItem(oldChartName(id)).name = chartName(id);
    await at.context.sync();
    if (old.some((id) => !aside.includes(id) && !now.includes(chartName(id))))
      throw new Error('A chart that was replaced does not come back.');
  };

/** Charts; one of an id that is there takes its place. Of several with one id the last counts. */
export const prepareCharts: Prepare = async ({ at, edits, over }) => {
  const charts = [
    ...new Map(only(edits, 'chart').map((chart) => [`${chart.sheet}\n${chart.id}`, chart])).values(),
  ];
  const laidOver = charts.filter((chart) => over.includes(chart));
  const sheets = [...new Set(laidOver.map(({ sheet }) => sheet))];
  const before = sheets.length > 0 ? await namesOn(at, sheets) : new Map<string, readonly string[]>();
  return {
    pieces: charts.map(layChart),
    last: charts.map((chart) =>
      replaceChart(chart, before.get(chart.sheet)?.includes(chartName(chart.id)) ?? false),
    ),
    putBack: sheets.map((sheet) => {
      const ids = laidOver.filter((chart) => chart.sheet === sheet).map(({ id }) => id);
      return putBackOn(sheet, ids, before.get(sheet) ?? []);
    }),
  };
};
