import { setTimeout as pause } from 'node:timers/promises';
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

const dialogIsThere = (): boolean => {
  try {
    display.act('search', '--onlyvisible', '--name', '^Print$');
    return true;
  } catch {
    return false;
  }
};

test('Print the card shows the office’s own printing with the card in it', async () => {
  await happens({ kind: 'open', section: 'round' });
  const printed = happens({ kind: 'press', action: 'round.print' });
  for (let tries = 0; tries < 60 && !dialogIsThere(); tries += 1) await pause(250);
  expect(dialogIsThere()).toBe(true);
  await pause(1_000);
  display.picture('gtk3-print');
  display.act('key', 'Escape');
  await printed;
  expect(dialogIsThere()).toBe(false);
  expect(await office.ask({ do: 'active_sheet', doc })).toBe('Round card');
});
