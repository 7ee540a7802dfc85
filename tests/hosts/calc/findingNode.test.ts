import { chmodSync, existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';

import { sheetOf } from './cells';
import { startOffice, type Office } from './office';

/* Where Node is looked for: where the user points it, then on PATH. */

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
