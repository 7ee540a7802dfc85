import { mkdtempSync, readFileSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { afterEach, beforeEach, expect, test } from 'vitest';

import { NOT_AVAILABLE, sheetOf, type Sheet } from './cells';
import {
  alive,
  engines,
  logOf,
  NODE,
  paneOf,
  program,
  saysOnly,
  SECONDS,
  timed,
  until,
  words,
} from './engines';
import { startOffice, type Office } from './office';

/* Node programs that are missing, too old, slow or broken. */

/** What Calc may be held for, s: two seconds, and what the test's own way there and back takes. */
const HELD = 2.6;
/** A change that waits for nobody, s. */
const AT_ONCE = 1;
/** Seconds after which a start that failed may be made again. */
const REST = 30;

let folder: string;
let office: Office;
let sheet: Sheet;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'wandcount-node-'));
});
afterEach(async () => {
  await office?.end();
  rmSync(folder, { recursive: true });
});

const open = async (env: Readonly<Record<string, string>>): Promise<void> => {
  office = await startOffice({ env });
  sheet = sheetOf(office, await office.ask<string>({ do: 'open_document' }));
  await sheet.values('B1', [[0.7]]);
  // Loads the component, which starts no engine.
  await office.ask({ do: 'described', name: 'FEED.SECONDS' });
};
/** The program that alone is looked at. */
const only = (script: string) => ({ WANDCOUNT_NODE: program(join(folder, 'only', 'node'), script) });
/** Programs on PATH, one after another. */
const onPath = (...scripts: readonly string[]) => ({
  PATH: [
    ...scripts.map((script, index) => {
      program(join(folder, String(index), 'node'), script);
      return join(folder, String(index));
    }),
    '/usr/bin:/bin',
  ].join(':'),
});
const RUNS = `exec ${NODE} "$@"`;

const put = () => timed(() => sheet.put('A1', [SECONDS]));
const change = (to: number) => timed(() => sheet.values('B1', [[to]]));
const cellIs = async (value: number): Promise<boolean> =>
  Math.abs(Number((await sheet.cell('A1')).value) - value) < 1e-9;
const shown = async (): Promise<string> => words(await paneOf(office, sheet.doc));

test('without Node cells show #N/A, the pane says what to do, and all is right once there is one', async () => {
  const node = join(folder, 'node');
  await open({ WANDCOUNT_NODE: node });
  expect(await put()).toBeLessThan(AT_ONCE);
  expect((await sheet.cell('A1')).error).toBe(NOT_AVAILABLE);
  const told = await shown();
  expect(told).toContain(`The node program at ${node} does not run the feeding engine`);
  expect(told).toContain('Try again');
  expect((await sheet.shows('=1+1')).value).toBe(2);

  symlinkSync(process.execPath, node);
  await put();
  await office.ask({ do: 'dispatch', doc: sheet.doc, command: 'vnd.wandcount:tryAgain' });
  expect(await cellIs(15)).toBe(true);
  expect(await shown()).toContain('Garden');
});

test('one that is too old is passed over for the next that is not', async () => {
  await open(onPath(saysOnly('18.20.8'), RUNS));
  expect(await put()).toBeLessThan(HELD);
  expect(await cellIs(15)).toBe(true);
  expect(await shown()).toContain('Garden');
  const old = engines(office).filter((_, index) => index % 2 === 0);
  expect(old).toHaveLength(2);
  expect(await until(() => !old.some(alive), 2_000)).toBe(true);
  expect(logOf(office)).toContain('18.20.8');
});

test('where there is only one that is too old the pane says which, where, and what to do', async () => {
  const env = only(saysOnly('18.20.8'));
  await open(env);
  expect(await put()).toBeLessThan(HELD);
  expect((await sheet.cell('A1')).error).toBe(NOT_AVAILABLE);
  const told = await shown();
  expect(told).toContain(`Wandcount needs Node.js 20 or newer; the one at ${env.WANDCOUNT_NODE} is 18.20.8.`);
  expect(told).toContain('Install a newer one from nodejs.org');
  expect(await until(() => !engines(office).some(alive), 2_000)).toBe(true);
  // Nothing is tried again that somebody waits for.
  expect(await change(0.8)).toBeLessThan(AT_ONCE);
  expect(await shown()).toContain('is 18.20.8');
});

test('one that is slow to end without a word holds Calc for two seconds at most, once', async () => {
  await open(only('[ "$1" = --version ] && sleep 1.5 && exit 1\nsleep 1.2\nexit 1'));
  expect(await put()).toBeLessThan(HELD);
  expect((await sheet.cell('A1')).error).toBe(NOT_AVAILABLE);
  expect(await change(0.8)).toBeLessThan(AT_ONCE);
  const before = engines(office).length;
  await pause((REST + 1) * 1_000);
  expect(await change(0.9)).toBeLessThan(AT_ONCE);
  expect(await until(() => engines(office).length > before, 2_000)).toBe(true);
  await pause(1_500);
  expect(await shown()).toContain('does not run the feeding engine');
});

test('one that is slow to start holds Calc for two seconds, once, and the cells come right by themselves', async () => {
  await open(only(`sleep 4\n${RUNS}`));
  const held = await put();
  expect(held).toBeGreaterThan(1.5);
  expect(held).toBeLessThan(HELD);
  expect(await change(1.4)).toBeLessThan(AT_ONCE);
  expect((await sheet.cell('A1')).error).toBe(NOT_AVAILABLE);
  expect(await until(() => cellIs(30), 10_000)).toBe(true);
});

test('one that never says a word is ended, with what it started, and the next one is used', async () => {
  const pids = join(folder, 'pids');
  await open(onPath(`sleep 300 &\necho $! >> '${pids}'\nwait`, RUNS));
  expect(await put()).toBeLessThan(HELD);
  expect(await change(1.4)).toBeLessThan(AT_ONCE);
  expect(await until(() => cellIs(30), 25_000)).toBe(true);
  await until(async () => (await shown()).includes('Garden'), 10_000);
  expect(await shown()).toContain('Garden');
  const left = readFileSync(pids, 'utf8').trim().split('\n').map(Number);
  expect(left).toHaveLength(2);
  expect(await until(() => !left.some(alive), 2_000)).toBe(true);
});

test('a script that starts Node and hangs with it holds Calc no longer', async () => {
  const pid = join(folder, 'pid');
  await open(only(`exec 3<&0\n${NODE} "$@" <&3 &\necho $! > '${pid}'\nwait`));
  await put();
  expect(await cellIs(15)).toBe(true);
  process.kill(Number(readFileSync(pid, 'utf8')), 'SIGSTOP');
  expect(await change(1.4)).toBeLessThan(HELD + 0.2);
  expect((await sheet.cell('A1')).error).toBe(NOT_AVAILABLE);
  expect(await until(() => cellIs(30), 10_000)).toBe(true);
});

test('an engine that ends again and again is left alone', async () => {
  await open(only(`echo '{"ready":"22.1.0"}'\nread -r line\nexit 7`));
  expect(await put()).toBeLessThan(HELD);
  const starts = engines(office).length;
  expect(starts).toBe(5);
  expect(await change(0.8)).toBeLessThan(AT_ONCE);
  expect(engines(office)).toHaveLength(starts);
  await paneOf(office, sheet.doc, { kind: 'open', section: 'rig' });
  expect(await until(async () => (await shown()).includes('ends again and again'), 5_000)).toBe(true);
});
