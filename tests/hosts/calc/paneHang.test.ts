import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';

import type { PaneEvent } from '../../../taskpane/view';
import { startOffice, type Office } from './office';

let office: Office;
let doc: string;
beforeAll(async () => {
  office = await startOffice();
  doc = await office.ask<string>({ do: 'open_document' });
});
afterAll(async () => office?.end());

const log = (): string => readFileSync(join(office.userFolder, 'wandcount.log'), 'utf8');
const engines = (): number[] =>
  [...log().matchAll(/engine (\d+) started/g)].map(([, number]) => Number(number));
const opened = (section: string) => {
  const event: PaneEvent = { kind: 'open', section };
  return office.ask<{ section: string }>({ do: 'job', doc, request: { event } }, 100);
};

test('a pane’s engine that says nothing for 20 s is ended, and another one goes on', async () => {
  expect((await opened('rig')).section).toBe('rig');
  const before = engines();
  process.kill(before.at(-1)!, 'SIGSTOP');
  const began = performance.now();
  await opened('mix');
  const waited = (performance.now() - began) / 1_000;
  expect(waited).toBeGreaterThan(19);
  expect(waited).toBeLessThan(40);
  expect(log()).toContain("the pane's engine says nothing");
  expect(engines()).toHaveLength(before.length + 1);
  expect((await opened('rig')).section).toBe('rig');
});
