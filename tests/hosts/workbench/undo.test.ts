import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';

import type { Area, Edit } from '../../../addin/workbook/change';
import type { Outline, Snapshot } from '../../../addin/workbook/port';
import { WorkbookError } from '../../../addin/workbook/port';
import { openTestPage, type TestPage } from './openTestPage';

let bench: TestPage;
beforeAll(async () => {
  bench = await openTestPage();
});
afterAll(() => bench?.close());
beforeEach(() => bench.call('open'));

const area = (sheet: string, row: number, column: number, rows = 1, columns = 1): Area => ({
  sheet,
  row,
  column,
  rows,
  columns,
});

/** One edit of every kind, some of them on a new sheet. */
const EVERY_KIND: readonly Edit[] = [
  { kind: 'addSheet', sheet: 'Beds' },
  {
    kind: 'write',
    sheet: 'Beds',
    row: 0,
    column: 0,
    cells: [
      ['Bed', 'Roses'],
      ['East', 24],
      ['West', { formula: '=B2*2' }],
    ],
  },
  { kind: 'write', sheet: 'Sheet1', row: 0, column: 0, cells: [['new', { formula: '=Roses+1' }]] },
  { kind: 'format', area: area('Sheet1', 0, 1), format: '0.00' },
  { kind: 'width', sheet: 'Sheet1', column: 0, columns: 1, characters: 30 },
  { kind: 'style', area: area('Sheet1', 0, 0), style: 'title' },
  { kind: 'wrap', area: area('Sheet1', 0, 0) },
  { kind: 'merge', area: area('Sheet1', 3, 0, 1, 3) },
  { kind: 'freeze', sheet: 'Sheet1', rows: 1, columns: 0 },
  { kind: 'list', area: area('Sheet1', 5, 0, 3, 1), source: ['pot', 'ground'], message: 'Pot or ground.' },
  { kind: 'name', name: 'Roses', area: area('Beds', 1, 1) },
  { kind: 'note', sheet: 'Sheet1', row: 0, column: 0, text: 'New note' },
  { kind: 'page', area: area('Sheet1', 0, 0, 4, 4), landscape: true, repeatRows: 1 },
  {
    kind: 'chart',
    id: 'roses',
    sheet: 'Sheet1',
    row: 8,
    column: 0,
    type: 'line',
    title: 'Roses',
    finding: 'West has more.',
    labels: area('Beds', 1, 0, 2, 1),
    series: [{ name: 'Roses', values: area('Beds', 1, 1, 2, 1) }],
  },
  { kind: 'activate', sheet: 'Beds', row: 1, column: 1 },
];

const everything = async () => {
  const outline: Outline = await bench.call('outline');
  const used = outline.sheets
    .filter((sheet) => sheet.rows > 0)
    .map((sheet) => area(sheet.name, 0, 0, sheet.rows, sheet.columns));
  const { blocks }: Snapshot = await bench.call('read', used);
  const ask = (name: string, ...args: unknown[]) => bench.call(name, 'Sheet1', ...args);
  return {
    sheets: outline.sheets,
    names: outline.names,
    blocks,
    format: await ask('format', 0, 1),
    width: await ask('width', 0),
    look: await ask('look', 0, 0),
    wrapped: await ask('wrapped', 0, 0),
    frozen: await ask('frozen'),
    list: await ask('list', 6, 0),
    note: await ask('note', 0, 0),
    page: await ask('page'),
    charts: await ask('charts'),
  };
};

/** What the page says of errors in the work and in what is drawn after it. */
const troublesIn = async (work: () => Promise<unknown>): Promise<readonly string[]> => {
  const before = bench.troubles.length;
  await work();
  await bench.page.evaluate(
    () =>
      new Promise<void>((drawn) => {
        requestAnimationFrame(() => requestAnimationFrame(() => requestIdleCallback(() => drawn())));
      }),
  );
  return bench.troubles.slice(before);
};

const before = async () => {
  await bench.call('apply', {
    title: 'Begin',
    edits: [
      { kind: 'write', sheet: 'Sheet1', row: 0, column: 0, cells: [['old', 1]] },
      { kind: 'note', sheet: 'Sheet1', row: 0, column: 0, text: 'Old note' },
      { kind: 'page', area: area('Sheet1', 0, 0), landscape: false, repeatRows: 0 },
    ],
  });
  return everything();
};

test('one step takes back every kind of edit, notes, charts and pages too, and one brings them again', async () => {
  const old = await before();
  await bench.call('apply', { title: 'Everything', edits: EVERY_KIND });
  const changed = await everything();
  for (const key of Object.keys(old) as (keyof typeof old)[]) expect(changed[key], key).not.toEqual(old[key]);
  expect(await troublesIn(() => bench.call('undo'))).toEqual([]);
  expect(await everything()).toEqual(old);
  expect(await troublesIn(() => bench.call('redo'))).toEqual([]);
  expect(await everything()).toEqual(changed);
});

test('the sheets of a step are taken back while one of them is shown: the sheet of before is shown again', async () => {
  await before();
  await bench.call('apply', { title: 'Everything', edits: EVERY_KIND });
  const active = async () => ((await bench.call('outline')) as Outline).active;
  expect(await active()).toBe('Beds');
  expect(await troublesIn(() => bench.call('undo'))).toEqual([]);
  expect(await active()).toBe('Sheet1');
  expect(await troublesIn(() => bench.call('redo'))).toEqual([]);
  expect(await active()).toBe('Beds');
});

test.each([
  ['a note', 'sheet.command.update-note'],
  ['a list rule', 'sheet.command.addDataValidation'],
  ['a chart', 'sheet.command.insert-sheet-image'],
  ['a merge', 'sheet.mutation.add-worksheet-merge'],
])('a grid that fails at %s leaves the workbook and its undo as they were', async (_what, command) => {
  const old = await before();
  await bench.call('failAt', command);
  await expect(bench.call('apply', { title: 'Everything', edits: EVERY_KIND })).rejects.toThrow(
    WorkbookError,
  );
  await bench.call('failAt', '');
  expect(await everything()).toEqual(old);
  await bench.call('undo');
  const { blocks } = await everything();
  expect(blocks).toEqual([]);
});

test('a hundred steps can be taken back', async () => {
  for (let step = 0; step < 101; step++)
    await bench.call('apply', {
      title: 'Count',
      edits: [{ kind: 'write', sheet: 'Sheet1', row: 0, column: 0, cells: [[step]] }],
    });
  for (let step = 0; step < 105; step++) await bench.call('undo');
  expect((await everything()).blocks[0]!.cells[0]![0]!.value).toBe(0);
});
