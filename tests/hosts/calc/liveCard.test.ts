import { afterAll, beforeAll, expect, test } from 'vitest';

import type { MemoryWorkbook } from '../../../addin/workbook/memoryWorkbook';
import { agreement } from '../../properties/liveCard/agreement';
import type { LiveBook } from '../../properties/liveCard/gridBook';
import { workbookOf } from './books';
import { writtenInto } from './memoryInto';
import { startOffice, type Office } from './office';

let office: Office;
beforeAll(async () => {
  office = await startOffice();
});
afterAll(async () => office?.end());

/** A memory workbook's cells and names in a document of Calc. */
const open = async (workbook: MemoryWorkbook): Promise<LiveBook> => {
  const doc = await office.ask<string>({ do: 'open_document' });
  const calc = workbookOf(office, doc);
  await calc.apply(writtenInto(workbook.inspect(), await calc.outline()));
  return {
    outline: () => calc.outline(),
    read: (areas) => calc.read(areas),
    type: (cells) =>
      calc.apply({
        title: 'Typed',
        edits: cells.map(({ sheet, row, column, input }) => ({
          kind: 'write',
          sheet,
          row,
          column,
          cells: [[input]],
        })),
      }),
    close: () => office.ask({ do: 'close', doc }),
  };
};

test('in Calc a card shows what the planner says of the cells now and keeps to every label, or says that it is out of date', async () => {
  const { cards, followed, outOfDate, found } = await agreement({ many: 12, edits: 5, seed: 12 }, open);
  expect(found).toEqual([]);
  expect(cards).toBeGreaterThan(8);
  expect(followed).toBeGreaterThan(cards * 2);
  expect(outOfDate).toBeGreaterThan(0);
}, 600_000);
