import { afterAll, beforeAll, expect, test } from 'vitest';

import { portContract } from '../../workbook/portContract/portContract';
import { openTestPage, type TestPage } from './openTestPage';

let bench: TestPage;
beforeAll(async () => {
  bench = await openTestPage();
});
afterAll(() => bench?.close());

portContract('The grid of the workbench', async () => {
  await bench.call('open');
  return {
    workbook: {
      outline: () => bench.call('outline'),
      read: (areas) => bench.call('read', areas),
      apply: (change) => bench.call('apply', change),
    },
    undo: () => bench.call('undo'),
    inspect: {
      format: (...place) => bench.call('format', ...place),
      width: (...place) => bench.call('width', ...place),
      look: (...place) => bench.call('look', ...place),
      wrapped: (...place) => bench.call('wrapped', ...place),
      frozen: (sheet) => bench.call('frozen', sheet),
      list: (...place) => bench.call('list', ...place),
      note: (...place) => bench.call('note', ...place),
      charts: (sheet) => bench.call('charts', sheet),
      page: (sheet) => bench.call('page', sheet),
    },
    user: {
      renameSheet: (from, to) => bench.call('renameSheet', from, to),
      insertRows: (sheet, at, count) => bench.call('insertRows', sheet, at, count),
      insertColumns: (sheet, at, count) => bench.call('insertColumns', sheet, at, count),
    },
  };
});

test('the page said nothing of errors and asked for nothing elsewhere', () => {
  expect(bench.troubles).toEqual([]);
});
