import { afterAll, beforeAll, expect, test } from 'vitest';

import type { PaneEvent } from '../../../taskpane/view';
import { sheetOf, type Sheet } from './cells';
import { startOffice, type Office } from './office';

/* A user whose numbers have a comma before the decimals and whose formulas part their arguments with semicolons. */

let office: Office;
let sheet: Sheet;
beforeAll(async () => {
  office = await startOffice({ locale: 'de-DE' });
  sheet = sheetOf(office, await office.ask<string>({ do: 'open_document' }));
});
afterAll(async () => office.end());

const happens = async (event: PaneEvent): Promise<string> => {
  const { pieces } = await office.ask<{ pieces: { text?: string; label?: string; value?: string }[] }>({
    do: 'job',
    doc: sheet.doc,
    request: { event },
  });
  return pieces.map(({ text = '', label = '', value = '' }) => `${text}${label} ${value}`).join('\n');
};

test('a formula typed with commas computes, and shows a comma', async () => {
  const formula = '=FEED.SECONDS(0,7;"L";2,9;"L/min")';
  await office.ask({ do: 'put_local', doc: sheet.doc, sheet: 'Sheet1', cells: 'A1', formula });
  const cell = await sheet.cell('A1');
  expect(cell.value).toBeCloseTo((0.7 / 2.9) * 60, 9);
  expect(cell.shows).toContain(',');
});

test('the pane shows the selected formula as it is typed there', async () => {
  await office.ask({ do: 'select', doc: sheet.doc, sheet: 'Sheet1', cells: 'A1' });
  await happens({ kind: 'selected', sheet: 'Sheet1', row: 0, column: 0 });
  const told = await happens({ kind: 'fold', block: 'cell', open: true });
  expect(told).toContain('=FEED.SECONDS(0,7;"L";2,9;"L/min")');
  expect(told).toContain('0.7 L ÷ 2.9 L/min × 60 s/min');
});

test('the pane begins with metric measures, takes a comma, and writes the number it means', async () => {
  await happens({ kind: 'press', action: 'garden.new' });
  const rig = await happens({ kind: 'open', section: 'rig' });
  expect(rig).toContain('The bucket holds 10');
  for (const [field, value] of [
    ['rig.bucket', '7,5'],
    ['rig.time.1', '45,5'],
    ['rig.time.2', '46,5'],
    ['rig.time.3', '46'],
    ['rig.barrel', '200'],
  ] as const)
    await happens({ kind: 'type', field, value });
  const kept = await happens({ kind: 'press', action: 'rig.keep' });
  expect(kept).toMatch(/9\.78 L\/min/);
  const rows = await office.ask<(string | number)[][]>({
    do: 'values',
    doc: sheet.doc,
    sheet: 'Rig',
    cells: 'A1:G30',
  });
  expect(rows.flat()).toContain(7.5);
  expect(rows.flat()).toContain(45.5);
  expect(rows.flat()).not.toContain('7,5');
});
