import type { Edit } from '../../../workbook/change';
import type { BookAt } from '../bookAt';
import { chartName, oldChartName } from '../write/chart';
import { only } from '../write/touched';

import type { PutBack } from './putBack';

export interface KeptCharts {
  /** Charts of the change that take the place of one that is there. */
  readonly hasChart: (sheet: string, id: string) => boolean;
  readonly putBack: readonly PutBack[];
}

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

/** Which charts stand on the sheets that get new ones. */
export const keepCharts = async (
  at: BookAt,
  edits: readonly Edit[],
  isNew: (sheet: string) => boolean,
): Promise<KeptCharts> => {
  const charts = only(edits, 'chart').filter(({ sheet }) => !isNew(sheet));
  const sheets = [...new Set(charts.map(({ sheet }) => sheet))];
  if (sheets.length === 0) return { hasChart: () => false, putBack: [] };
  const names = await namesOn(at, sheets);
  return {
    hasChart: (sheet, id) => names.get(sheet)?.includes(chartName(id)) ?? false,
    putBack: sheets.map((sheet) => {
      const ids = charts.filter((chart) => chart.sheet === sheet).map(({ id }) => id);
      return putBackOn(sheet, [...new Set(ids)], names.get(sheet) ?? []);
    }),
  };
};
