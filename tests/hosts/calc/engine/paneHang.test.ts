import { chmodSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';

import type { PaneEvent } from '../../../../taskpane/view';
import { sheetOf } from '../cells';
import { startOffice, type Office } from '../office';

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
  const shown = await opened('mix');
  const waited = (performance.now() - began) / 1_000;
  expect(waited).toBeGreaterThan(19);
  expect(waited).toBeLessThan(40);
  expect(log()).toContain("the pane's engine says nothing");
  expect(engines()).toHaveLength(before.length + 1);
  expect(shown.section).toBe('garden');
  expect((await opened('rig')).section).toBe('rig');
});

const ROSES = 20_000;
/** How the engine asks for the first part of such a list, which makes more than a pipe holds. */
const ASKS = '["Sheet1",0,0,5000,4]';

/** A Node whose program stops as soon as it has asked for the list. */
const stoppingNode = (folder: string): string => {
  const before = join(folder, 'stopping.cjs');
  writeFileSync(
    before,
    `const write = process.stdout.write.bind(process.stdout);
     process.stdout.write = (said, ...rest) => {
       const done = write(said, ...rest);
       if (String(said).includes('${ASKS}')) process.kill(process.pid, 'SIGSTOP');
       return done;
     };`,
  );
  const node = join(folder, 'node');
  writeFileSync(node, `#!/bin/sh\nexec "${process.execPath}" -r "${before}" "$@"\n`);
  chmodSync(node, 0o755);
  return node;
};

/** True for a process that stands still; Linux tells. */
const stands = (pid: number): boolean => / T /.test(readFileSync(`/proc/${pid}/stat`, 'utf8'));

test('a pane’s engine that stops when it has asked for a long list does not hold Calc', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'wandcount-node-'));
  await office.end();
  office = await startOffice({ env: { WANDCOUNT_NODE: stoppingNode(folder) } });
  doc = await office.ask<string>({ do: 'open_document' });
  await opened('rig');
  const stopped = engines().at(-1)!;
  await sheetOf(office, doc).values(`A1:D${ROSES + 1}`, [
    ['Variety', 'Bed', 'Type', 'Qty'],
    ...Array.from({ length: ROSES }, (_, row) => [`Rose ${row + 1}`, `Bed ${row % 40}`, 'HT', 1]),
  ]);
  await office.ask({ do: 'dispatch', doc, command: 'vnd.wandcount:open.garden' });
  await vi.waitUntil(() => stands(stopped), { timeout: 20_000, interval: 20 });
  const began = performance.now();
  expect(await office.ask<string[]>({ do: 'sheet_names', doc })).toEqual(['Sheet1']);
  expect((performance.now() - began) / 1_000).toBeLessThan(2);
  expect(stands(stopped)).toBe(true);
  rmSync(folder, { recursive: true });
});
