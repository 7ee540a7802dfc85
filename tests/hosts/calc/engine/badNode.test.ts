import { mkdtempSync, readFileSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { expect, test as plain } from 'vitest';

import { NOT_AVAILABLE, sheetOf, type Sheet } from '../cells';
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
import { startOffice, type Office } from '../office';

/* Node programs that are missing, too old, slow or broken. */

/** What Calc may be held for, s: two seconds, and what the test's own way there and back takes. */
const HELD = 2.6;
/** A change that waits for nobody, s. */
const AT_ONCE = 1;
/** Seconds after which a start that failed may be made again. */
const REST = 30;

/** A document in Calc, one cell of which computes. */
interface Computed {
  readonly office: Office;
  readonly sheet: Sheet;
  /** Seconds that Calc takes to put the formula into the cell. */
  put(): Promise<number>;
  /** Seconds that Calc takes with another dose. */
  change(to: number): Promise<number>;
  is(value: number): Promise<boolean>;
  error(): Promise<number>;
  /** The words of the pane. */
  shown(): Promise<string>;
}

const computed = async (office: Office): Promise<Computed> => {
  const sheet = sheetOf(office, await office.ask<string>({ do: 'open_document' }));
  await sheet.values('B1', [[0.7]]);
  // Loads the component, which starts no engine.
  await office.ask({ do: 'described', name: 'FEED.SECONDS' });
  return {
    office,
    sheet,
    put: () => timed(() => sheet.put('A1', [SECONDS])),
    change: (to) => timed(() => sheet.values('B1', [[to]])),
    is: async (value) => Math.abs(Number((await sheet.cell('A1')).value) - value) < 1e-9,
    error: async () => (await sheet.cell('A1')).error,
    shown: async () => words(await paneOf(office, sheet.doc)),
  };
};

interface Fixtures {
  /** For the programs of the test. */
  readonly folder: string;
  /** Starts Calc with a setting of the environment. */
  open(env: Readonly<Record<string, string>>): Promise<Computed>;
}

const test = plain.extend<Fixtures>({
  // eslint-disable-next-line no-empty-pattern
  folder: async ({}, use) => {
    const folder = mkdtempSync(join(tmpdir(), 'wandcount-node-'));
    await use(folder);
    rmSync(folder, { recursive: true });
  },
  // eslint-disable-next-line no-empty-pattern
  open: async ({}, use) => {
    const offices: Office[] = [];
    await use(async (env) => {
      offices.push(await startOffice({ env }));
      return computed(offices.at(-1)!);
    });
    for (const office of offices) await office.end();
  },
});

/** The program that alone is looked at. */
const only = (folder: string, script: string) => ({
  WANDCOUNT_NODE: program(join(folder, 'only', 'node'), script),
});
/** Programs on PATH, one after another. */
const onPath = (folder: string, ...scripts: readonly string[]) => ({
  PATH: [
    ...scripts.map((script, index) => {
      program(join(folder, String(index), 'node'), script);
      return join(folder, String(index));
    }),
    '/usr/bin:/bin',
  ].join(':'),
});
const RUNS = `exec ${NODE} "$@"`;

test('without Node cells show #N/A, the pane says what to do, and all is right once there is one', async ({
  folder,
  open,
}) => {
  const node = join(folder, 'node');
  const calc = await open({ WANDCOUNT_NODE: node });
  expect(await calc.put()).toBeLessThan(AT_ONCE);
  expect(await calc.error()).toBe(NOT_AVAILABLE);
  const told = await calc.shown();
  expect(told).toContain(`The node program at ${node} does not run the feeding engine`);
  expect(told).toContain('Try again');
  await calc.sheet.put('A2', ['=1+1']);
  expect((await calc.sheet.cell('A2')).value).toBe(2);

  symlinkSync(process.execPath, node);
  await calc.office.ask({ do: 'dispatch', doc: calc.sheet.doc, command: 'vnd.wandcount:tryAgain' });
  expect(await until(() => calc.is(15), 5_000)).toBe(true);
  expect(await calc.shown()).toContain('Garden');
});

test('one that is too old is passed over for the next that is not', async ({ folder, open }) => {
  const calc = await open(onPath(folder, saysOnly('18.20.8'), RUNS));
  expect(await calc.put()).toBeLessThan(HELD);
  expect(await calc.is(15)).toBe(true);
  expect(await calc.shown()).toContain('Garden');
  const old = engines(calc.office).filter((_, index) => index % 2 === 0);
  expect(old).toHaveLength(2);
  expect(await until(() => !old.some(alive), 2_000)).toBe(true);
  expect(logOf(calc.office)).toContain('18.20.8');
});

test('where there is only one that is too old the pane says which, where, and what to do', async ({
  folder,
  open,
}) => {
  const env = only(folder, saysOnly('18.20.8'));
  const calc = await open(env);
  expect(await calc.put()).toBeLessThan(HELD);
  expect(await calc.error()).toBe(NOT_AVAILABLE);
  const told = await calc.shown();
  expect(told).toContain(`Wandcount needs Node.js 20 or newer; the one at ${env.WANDCOUNT_NODE} is 18.20.8.`);
  expect(told).toContain('Install a newer one from nodejs.org');
  expect(await until(() => !engines(calc.office).some(alive), 2_000)).toBe(true);
  // Nothing is tried again that somebody waits for.
  expect(await calc.change(0.8)).toBeLessThan(AT_ONCE);
  expect(await calc.shown()).toContain('is 18.20.8');
});

test('one that is slow to start holds Calc for two seconds, once, and the cells come right by themselves', async ({
  folder,
  open,
}) => {
  const calc = await open(only(folder, `sleep 4\n${RUNS}`));
  const held = await calc.put();
  expect(held).toBeGreaterThan(1.5);
  expect(held).toBeLessThan(HELD);
  expect(await calc.change(1.4)).toBeLessThan(AT_ONCE);
  expect(await calc.error()).toBe(NOT_AVAILABLE);
  expect(await until(() => calc.is(30), 10_000)).toBe(true);
});

test('a script that starts Node and hangs with it holds Calc no longer', async ({ folder, open }) => {
  const pid = join(folder, 'pid');
  const calc = await open(only(folder, `exec 3<&0\n${NODE} "$@" <&3 &\necho $! > '${pid}'\nwait`));
  await calc.put();
  expect(await calc.is(15)).toBe(true);
  process.kill(Number(readFileSync(pid, 'utf8')), 'SIGSTOP');
  expect(await calc.change(1.4)).toBeLessThan(HELD + 0.2);
  expect(await calc.error()).toBe(NOT_AVAILABLE);
  expect(await until(() => calc.is(30), 10_000)).toBe(true);
});

test('an engine that ends again and again is left alone', async ({ folder, open }) => {
  const calc = await open(only(folder, `echo '{"ready":"22.1.0"}'\nread -r line\nexit 7`));
  expect(await calc.put()).toBeLessThan(HELD);
  const starts = engines(calc.office).length;
  expect(starts).toBe(5);
  expect(await calc.change(0.8)).toBeLessThan(AT_ONCE);
  expect(engines(calc.office)).toHaveLength(starts);
  await paneOf(calc.office, calc.sheet.doc, { kind: 'open', section: 'rig' });
  expect(await until(async () => (await calc.shown()).includes('ends again and again'), 5_000)).toBe(true);
});

/* These wait for most of their time, so they wait together. */

test.concurrent(
  'one that is slow to end without a word holds Calc for two seconds at most, once',
  async ({ folder, open }) => {
    const calc = await open(only(folder, '[ "$1" = --version ] && sleep 1.5 && exit 1\nsleep 1.2\nexit 1'));
    expect(await calc.put()).toBeLessThan(HELD);
    expect(await calc.error()).toBe(NOT_AVAILABLE);
    expect(await calc.change(0.8)).toBeLessThan(AT_ONCE);
    const before = engines(calc.office).length;
    await pause((REST + 1) * 1_000);
    expect(await calc.change(0.9)).toBeLessThan(AT_ONCE);
    expect(await until(() => engines(calc.office).length > before, 2_000)).toBe(true);
    const says = async () => (await calc.shown()).includes('does not run the feeding engine');
    expect(await until(says, 5_000)).toBe(true);
  },
);

test.concurrent(
  'one that never says a word is ended, with what it started, and the next one is used',
  async ({ folder, open }) => {
    const pids = join(folder, 'pids');
    const calc = await open(onPath(folder, `sleep 300 &\necho $! >> '${pids}'\nwait`, RUNS));
    expect(await calc.put()).toBeLessThan(HELD);
    expect(await calc.change(1.4)).toBeLessThan(AT_ONCE);
    // The pane waits for an engine of its own.
    expect(await until(async () => (await calc.shown()).includes('Garden'), 30_000)).toBe(true);
    expect(await until(() => calc.is(30), 10_000)).toBe(true);
    const left = readFileSync(pids, 'utf8').trim().split('\n').map(Number);
    expect(left).toHaveLength(2);
    expect(await until(() => !left.some(alive), 2_000)).toBe(true);
  },
);
