import { chmodSync, existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';

import { root } from '../../../../addin/build/paths.mjs';
import { NOT_AVAILABLE, sheetOf } from '../cells';
import { startOffice, type Office } from '../office';

/* Where Node is looked for: where the user points it, then on PATH; `usualPlaces.test.ts` has the rest. */

let folder: string;
let office: Office;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'wandcount-node-'));
});
afterEach(async () => {
  await office.end();
  rmSync(folder, { recursive: true });
});

/** A node program that leaves a mark when it is started. */
const marked = (name: string): { path: string; started: () => boolean } => {
  mkdirSync(join(folder, name));
  const [path, mark] = [join(folder, name, 'node'), join(folder, `${name}-started`)];
  writeFileSync(path, `#!/bin/sh\n: > '${mark}'\nexec '${process.execPath}' "$@"\n`);
  chmodSync(path, 0o755);
  return { path, started: () => existsSync(mark) };
};

const computes = async (): Promise<void> => {
  const sheet = sheetOf(office, await office.ask<string>({ do: 'open_document' }));
  expect((await sheet.shows('=FEED.SECONDS(0.7;"gal";2.8;"gal/min")')).value).toBeCloseTo(15, 9);
};

test('on PATH', async () => {
  const onPath = marked('path');
  office = await startOffice({ env: { PATH: `${join(folder, 'path')}:/usr/bin:/bin` } });
  await computes();
  expect(onPath.started()).toBe(true);
});

test('where the user points it, whatever is on PATH', async () => {
  const [onPath, chosen] = [marked('path'), marked('chosen')];
  office = await startOffice({ env: { PATH: `${join(folder, 'path')}:/usr/bin:/bin` } });
  writeFileSync(join(office.userFolder, 'wandcount.json'), JSON.stringify({ node: chosen.path }));
  await computes();
  expect(chosen.started()).toBe(true);
  expect(onPath.started()).toBe(false);
});

test('where WANDCOUNT_NODE says, whatever is on PATH, but where the user points it before that', async () => {
  const [onPath, named, chosen] = [marked('path'), marked('named'), marked('chosen')];
  const env = { PATH: `${join(folder, 'path')}:/usr/bin:/bin`, WANDCOUNT_NODE: named.path };
  office = await startOffice({ env });
  writeFileSync(join(office.userFolder, 'wandcount.json'), JSON.stringify({ node: chosen.path }));
  await computes();
  expect([onPath, named, chosen].map(({ started }) => started())).toEqual([false, false, true]);
  await office.end();
  office = await startOffice({ env });
  await computes();
  expect([onPath, named].map(({ started }) => started())).toEqual([false, true]);
});

test('nowhere to be found: cells show #N/A, and the pane says what to do', async () => {
  const withoutNode = join(root, 'tests', 'hosts', 'calc', 'engine', 'withoutNode');
  office = await startOffice({ env: { PYTHONPATH: withoutNode, WANDCOUNT_NODE: undefined } });
  const sheet = sheetOf(office, await office.ask<string>({ do: 'open_document' }));
  expect((await sheet.shows('=FEED.SECONDS(0.7;"gal";2.8;"gal/min")')).error).toBe(NOT_AVAILABLE);
  const shown = await office.ask<object>({ do: 'job', doc: sheet.doc, request: {} });
  for (const words of [
    'found none on this computer',
    'Try again',
    'Choose the node program…',
    'Show the log',
  ])
    expect(JSON.stringify(shown)).toContain(words);
  expect((await sheet.shows('=1+1')).value).toBe(2);
});
