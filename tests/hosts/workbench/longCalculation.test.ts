import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';

import type { Snapshot } from '../../../addin/workbook/port';
import { openTestPage, type TestPage } from './openTestPage';

/* A grid that is waited for no longer than a calculation takes. */

const ROWS = 4_000;

let bench: TestPage;
beforeAll(async () => {
  bench = await openTestPage(50);
});
afterAll(() => bench?.close());
beforeEach(() => bench.call('open'));

const apply = () =>
  bench.call('apply', {
    title: 'Long',
    edits: [
      {
        kind: 'write',
        sheet: 'Sheet1',
        row: 0,
        column: 0,
        cells: Array.from({ length: ROWS }, (_, row) => [row, { formula: `=A${row + 1}*2` }]),
      },
    ],
  });
const last = async () => {
  const { blocks }: Snapshot = await bench.call('read', [
    { sheet: 'Sheet1', row: ROWS - 1, column: 0, rows: 1, columns: 2 },
  ]);
  return blocks[0]!.cells[0]!;
};

test('a calculation that is not waited for fails nothing: the change stands, and its results follow', async () => {
  await apply();
  expect(await last()).toEqual([{ value: ROWS - 1 }, { value: null, formula: `=A${ROWS}*2` }]);
  expect(await bench.call('behind')).toBe(true);
  await bench.call('caughtUp');
  expect(await bench.call('behind')).toBe(false);
  expect((await last())[1]).toEqual({ value: (ROWS - 1) * 2, formula: `=A${ROWS}*2` });
  await bench.call('undo');
  expect((await last())[0]).toEqual({ value: null });
  expect(bench.troubles).toEqual([]);
});

test('another workbook is opened in the midst of a calculation', async () => {
  await apply();
  await last();
  expect(await bench.call('behind')).toBe(true);
  await bench.call('open');
  expect(await last()).toEqual([{ value: null }, { value: null }]);
  await apply();
  await last();
  await bench.call('caughtUp');
  expect((await last())[1]).toMatchObject({ value: (ROWS - 1) * 2 });
  expect(bench.troubles).toEqual([]);
});
