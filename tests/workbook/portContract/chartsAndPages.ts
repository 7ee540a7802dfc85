import { expect, test } from 'vitest';
import type { Edit } from '../../../addin/workbook/change';
import { area, SHEET, told, write, type Trial } from './trial';

/** Charts, and sheets as they print. */
export const chartsAndPages = (trial: Trial): void => {
  const { apply } = trial;

  test('a chart of the same id takes the place of the old one', async (context) => {
    const charts = told(context, 'charts', trial.host.inspect?.charts);
    const chart = (title: string): Edit => ({
      kind: 'chart',
      id: 'fills',
      sheet: SHEET,
      row: 5,
      column: 0,
      type: 'bar',
      title,
      finding: 'The larger barrel needs fewer fills.',
      labels: area(1, 0, 2, 1),
      series: [{ name: 'Fills', values: area(1, 1, 2, 1) }],
    });
    await apply(
      write(0, 0, [
        ['Barrel', 'Fills'],
        ['30 gal', 8],
        ['60 gal', 4],
      ]),
      chart('Fills'),
    );
    await apply(chart('Fills by barrel'));
    expect(await charts(SHEET)).toEqual([{ id: 'fills', title: 'Fills by barrel', series: 1 }]);
  });

  test('a sheet prints as it was set up', async (context) => {
    const page = told(context, 'page set-up', trial.host.inspect?.page);
    await apply(write(0, 0, [['x', 'y']]), {
      kind: 'page',
      area: area(0, 0, 9, 2),
      landscape: true,
      repeatRows: 2,
    });
    expect(await page(SHEET)).toEqual({ landscape: true, repeatRows: 2 });
    await apply({
      kind: 'page',
      area: area(0, 0, 9, 2),
      landscape: true,
      repeatRows: 2,
      pagesHigh: 1,
    });
    expect(await page(SHEET)).toEqual({ landscape: true, repeatRows: 2, pagesHigh: 1 });
  });
};
