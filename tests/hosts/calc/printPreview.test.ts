import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';

import type { PaneEvent } from '../../../taskpane/view';
import { openList } from './mainJob';
import { startOffice, type Office } from './office';

/* With the print preview open, the window has no view of the cells. */

let office: Office;
let doc: string;
beforeAll(async () => {
  office = await startOffice();
  doc = await openList(office);
});
afterAll(async () => office?.end());

const happens = async (event: PaneEvent): Promise<string> =>
  JSON.stringify(await office.ask({ do: 'job', doc, request: { event } }));
const command = (name: string) => office.ask({ do: 'dispatch', doc, command: name });
const sheets = () => office.ask<string[]>({ do: 'sheet_names', doc });
const log = (): string => readFileSync(join(office.userFolder, 'wandcount.log'), 'utf8');

const adopt: PaneEvent = { kind: 'press', action: 'garden.adopt' };

test('what would be written is refused with what to do, and the pane still reads', async () => {
  const before = await sheets();
  await command('.uno:PrintPreview');
  await expect(office.ask({ do: 'active_sheet', doc })).rejects.toThrow('ActiveSheet');
  expect(await happens({ kind: 'workbookChanged' })).toContain('350 roses in 14 beds');
  const pressed = await happens(adopt);
  expect(pressed).toContain('Close the print preview, then try again.');
  expect(pressed).toContain('Make the plant inventory');
  expect(await sheets()).toEqual(before);
  expect(log()).not.toContain('Traceback');
});

test('the same press works once the preview is closed', async () => {
  await command('.uno:ClosePreview');
  expect(await happens(adopt)).toContain('Made the plant inventory');
  expect(await sheets()).toContain('Plants');
});

test('nor is a step taken back, or the card printed, before the preview is closed', async () => {
  await command('.uno:PrintPreview');
  expect(await happens({ kind: 'press', action: 'undo' })).toContain(
    'Close the print preview, then try again.',
  );
  expect(await sheets()).toContain('Plants');
  await command('.uno:ClosePreview');
  expect(await happens({ kind: 'press', action: 'undo' })).toContain('Taken back');
  expect(await sheets()).not.toContain('Plants');
});
