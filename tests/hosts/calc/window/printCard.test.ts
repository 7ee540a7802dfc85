import { afterAll, beforeAll, expect, test } from 'vitest';

import type { PaneEvent } from '../../../../taskpane/view';
import { openDisplay, type Display } from './display';
import { MAIN_JOB, openList } from '../mainJob';
import { startOffice, type Office } from '../office';

let display: Display;
let office: Office;
let doc: string;
const happens = (event: PaneEvent) => office.ask({ do: 'job', doc, request: { event } });

beforeAll(async () => {
  display = await openDisplay();
  office = await startOffice({ window: true, env: { ...display.env, SAL_USE_VCLPLUGIN: 'gtk3' } });
  doc = await openList(office);
  await office.ask({ do: 'window_size', doc, width: 1_270, height: 870 });
  const card = MAIN_JOB.findIndex((event) => event.kind === 'press' && event.action === 'round.card');
  for (const event of MAIN_JOB.slice(0, card + 1)) await happens(event);
});
afterAll(async () => {
  await office?.end();
  display?.end();
});

test('Print the card shows the office’s own printing with the card in it', async () => {
  await happens({ kind: 'open', section: 'round' });
  let printed: Promise<unknown> | undefined;
  await display.opens(() => {
    printed = happens({ kind: 'press', action: 'round.print' });
  });
  await display.expectWindow('^Print$');
  display.picture('gtk3-print');
  display.act('key', 'Escape');
  await printed;
  await display.expectNoWindow('^Print$');
  expect(await office.ask({ do: 'active_sheet', doc })).toBe('Round card');
});
