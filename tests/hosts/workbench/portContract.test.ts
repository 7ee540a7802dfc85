import { afterAll, beforeAll, expect, test } from 'vitest';

import { pressesReadFirst } from '../../taskpane/pressesReadFirst';
import type { HostUnderTest } from '../../workbook/portContract/hostUnderTest';
import { portContract } from '../../workbook/portContract/portContract';
import { openTestPage, workbookIn, type TestPage } from './openTestPage';

let bench: TestPage;
beforeAll(async () => {
  bench = await openTestPage();
});
afterAll(() => bench?.close());

const open = async (): Promise<HostUnderTest> => {
  await bench.call('open');
  return {
    workbook: workbookIn(bench),
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
};

portContract('The grid of the workbench', open);
pressesReadFirst('the grid of the workbench', open);

test('the page said nothing of errors and asked for nothing elsewhere', () => {
  expect(bench.troubles).toEqual([]);
});
