import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';

import type { Change } from '../../../addin/workbook/change';
import type { Outline, Snapshot } from '../../../addin/workbook/port';
import { openTestPage, type TestPage } from './openTestPage';

/* A list that the grid takes piece by piece. */

const ROWS = 5_000;
const LAST = { sheet: 'Long', row: ROWS - 1, column: 0, rows: 1, columns: 3 };
const LONG: Change = {
  title: 'Make a long list',
  edits: [
    { kind: 'addSheet', sheet: 'Long' },
    {
      kind: 'write',
      sheet: 'Long',
      row: 0,
      column: 0,
      cells: Array.from({ length: ROWS }, (_, row) => [`Rose ${row}`, row, { formula: `=B${row + 1}*2` }]),
    },
    { kind: 'style', area: { sheet: 'Long', row: 0, column: 1, rows: ROWS, columns: 1 }, style: 'input' },
    { kind: 'format', area: { sheet: 'Long', row: 0, column: 1, rows: ROWS, columns: 1 }, format: '0.00' },
    { kind: 'freeze', sheet: 'Long', rows: 1, columns: 0 },
  ],
};

let bench: TestPage;
beforeAll(async () => {
  bench = await openTestPage();
});
afterAll(() => bench?.close());
beforeEach(() => bench.call('open'));

const titles = async (): Promise<string[]> =>
  ((await bench.call('outline')) as Outline).sheets.map(({ name }) => name);
const lastRow = async () => ((await bench.call('read', [LAST])) as Snapshot).blocks[0]!.cells[0]!;
const WRITTEN = [
  { value: `Rose ${ROWS - 1}` },
  { value: ROWS - 1 },
  { value: 2 * (ROWS - 1), formula: `=B${ROWS}*2` },
];

test('it is one step, which undo takes back whole and redo brings again', async () => {
  await bench.call('apply', LONG);
  expect(await lastRow()).toEqual(WRITTEN);
  const look = await bench.call('look', 'Long', ROWS - 1, 1);
  expect(look).toEqual(await bench.call('look', 'Long', 0, 1));
  expect(await bench.call('format', 'Long', ROWS - 1, 1)).toBe('0.00');
  await bench.call('undo');
  expect(await titles()).toEqual(['Sheet1']);
  await bench.call('redo');
  expect(await titles()).toEqual(['Sheet1', 'Long']);
  expect(await lastRow()).toEqual(WRITTEN);
  expect(await bench.call('look', 'Long', ROWS - 1, 1)).toEqual(look);
});

test('what fails after it takes it back whole, and leaves nothing to undo', async () => {
  await bench.call('failAt', 'sheet.command.set-frozen');
  await expect(bench.call('apply', LONG)).rejects.toThrow('the workbook stays as it was');
  await bench.call('failAt', '');
  expect(await titles()).toEqual(['Sheet1']);
  await bench.call('undo');
  expect(await titles()).toEqual(['Sheet1']);
});

test('the grid takes no keys meanwhile and does so afterwards; formulas are worked out once, at its end', async () => {
  await bench.page.evaluate(() => {
    const locked: boolean[] = [];
    Object.assign(window, { locked });
    new MutationObserver((changes) =>
      changes.forEach(({ target }) => locked.push((target as HTMLElement).inert)),
    ).observe(document.body, { subtree: true, attributeFilter: ['inert'] });
  });
  const before = (await bench.call('calculations')) as number;
  await bench.call('apply', LONG);
  expect(await lastRow()).toEqual(WRITTEN);
  expect(await bench.call('calculations')).toBe(before + 1);
  const locked = await bench.page.evaluate(() => (window as unknown as { locked: boolean[] }).locked);
  expect(locked).toEqual([true, false]);
});

test('what takes a step back while it is written waits for its end', async () => {
  const writing = bench.call('apply', LONG);
  await bench.call('undo');
  await writing;
  expect(await titles()).toEqual(['Sheet1']);
});
