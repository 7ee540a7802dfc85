import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { afterEach, beforeEach, expect, test } from 'vitest';

import { calcWorkbook } from '../../../addin/hosts/calc/calcWorkbook';
import { readAnswer } from '../../../addin/hosts/calc/wire/requests';
import { usedArea } from '../../../addin/workbook/snapshot';
import type { PaneEvent } from '../../../taskpane/view';
import { sheetOf } from './cells';
import { startOffice, type Office } from './office';

/* Documents that are edited or closed while their pane is at work. */

let office: Office;
beforeEach(async () => {
  office = await startOffice();
});
afterEach(async () => office.end());

const log = (): string => readFileSync(join(office.userFolder, 'wandcount.log'), 'utf8');
/** The engine of the panes. */
const engine = (): number => Number([...log().matchAll(/engine (\d+) started/g)].at(-1)![1]);

const LIST = [
  ['Variety', 'Bed', 'Type', 'Qty'],
  ['Ada', 'East', 'HT', 1],
  ['Bea', 'East', 'HT', 1],
];
const openList = async (): Promise<string> => {
  const doc = await office.ask<string>({ do: 'open_document' });
  await sheetOf(office, doc).values('A1:D3', LIST);
  return doc;
};
const pane = async (doc: string, event?: PaneEvent): Promise<string> =>
  JSON.stringify(await office.ask({ do: 'job', doc, request: event === undefined ? {} : { event } }, 100));
const show = (doc: string) => office.ask({ do: 'dispatch', doc, command: 'vnd.wandcount:open.garden' });

test('what the user changes while the pane reads is read, too', async () => {
  const doc = await openList();
  expect(await pane(doc)).toContain('2 roses in 1 bed');
  process.kill(engine(), 'SIGSTOP');
  await show(doc);
  const at = { doc, sheet: 'Sheet1', cells: 'A4:D4', values: [['Cora', 'West', 'HT', 5]] };
  await office.ask({ do: 'put_values_behind', ...at, seconds: 1, goesOn: engine() });
  await expect.poll(() => pane(doc)).toContain('7 roses in 2 beds');
});

test('rows that are inserted between two questions of one reading: outline and cells are of one moment', async () => {
  const doc = await openList();
  let asked = 0;
  const workbook = calcWorkbook(async (request) => {
    const told = await office.ask({ do: 'job', doc, request });
    asked += 1;
    if (asked === 1) await office.ask({ do: 'insert_rows', doc, sheet: 'Sheet1', at: 0, count: 2 });
    return readAnswer(request.what, told);
  });
  const { sheets, blocks } = await workbook.read((outline) => [usedArea(outline, 'Sheet1')!]);
  expect(sheets).toMatchObject([{ name: 'Sheet1', rows: LIST.length + 2 }]);
  const values = blocks[0]!.cells.map((line) => line.map(({ value }) => value));
  expect(values.slice(2)).toEqual(LIST);
});

test('a document that is closed while its pane reads leaves the other one’s pane alone', async () => {
  const kept = await openList();
  await pane(kept, { kind: 'fold', block: 'cell', open: true });
  const closed = await openList();
  await pane(closed);
  const first = engine();
  process.kill(first, 'SIGSTOP');
  await show(closed);
  await office.ask({ do: 'set_modified', doc: closed, to: false });
  await office.ask({ do: 'close', doc: closed });
  process.kill(first, 'SIGCONT');
  // Longer than an engine may be silent while somebody waits for it.
  await pause(22_000);
  expect(log()).not.toContain('says nothing');
  expect(engine()).toBe(first);
  expect(await pane(kept)).toContain('▾ This cell');
});
