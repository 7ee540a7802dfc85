import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';

import { NOT_AVAILABLE, sheetOf, type Sheet } from '../cells';
import {
  alive,
  engines,
  logOf,
  NODE,
  paneOf,
  processorSeconds,
  program,
  SECONDS,
  threads,
  timed,
  until,
  words,
} from './engines';
import { startOffice, type Office } from '../office';

/** After so many ms an engine that hung would be there again; that none comes is known by waiting only. */
const LONGER_THAN_A_RESTART = 6_000;

let office: Office;
let sheet: Sheet;
const open = async (start: Parameters<typeof startOffice>[0] = {}): Promise<void> => {
  office = await startOffice(start);
  sheet = sheetOf(office, await office.ask<string>({ do: 'open_document' }));
};
const pane = (event?: object) => paneOf(office, sheet.doc, event);

describe('an engine that dies or hangs', () => {
  beforeEach(async () => {
    await open();
    await sheet.values('B1', [[0.7]]);
    await sheet.put('A1', [SECONDS]);
  });
  afterEach(async () => office.end());

  test('is started again when it was killed, and nobody notices', async () => {
    expect((await sheet.cell('A1')).value).toBeCloseTo(15, 9);
    process.kill(engines(office).at(-1)!, 'SIGKILL');
    await sheet.values('B1', [[1.4]]);
    expect((await sheet.cell('A1')).value).toBeCloseTo(30, 9);
    expect(engines(office)).toHaveLength(2);
  });

  test('is started again in the middle of a recalculation, and no cell is wrong', async () => {
    const rows = 5_000;
    const at = { doc: sheet.doc, sheet: 'Sheet1' };
    await sheet.values(
      `D1:D${rows}`,
      Array.from({ length: rows }, (_, row) => [0.5 + row / 1000]),
    );
    await sheet.values('F1', [[2]]);
    await office.ask({
      do: 'fill_down',
      ...at,
      cells: `E1:E${rows}`,
      formula: '=FEED.SECONDS(D1;"gal";$F$1;"gal/min")',
    });
    const engine = engines(office).at(-1)!;
    const before = processorSeconds(engine);
    const recalculated = office.ask<number>({ do: 'timed', ...at, set: 'F1', to: 3, cells: `E1:E${rows}` });
    expect(await until(() => processorSeconds(engine) > before, 5_000)).toBe(true);
    process.kill(engine, 'SIGKILL');
    await recalculated;
    const values = await office.ask<[number][]>({ do: 'values', ...at, cells: `E1:E${rows}` });
    values.forEach(([value], row) => expect(value).toBeCloseTo((0.5 + row / 1000) * 20, 9));
    expect(engines(office)).toHaveLength(2);
  });

  test('that hangs holds Calc for two seconds once, not once a cell, and the cells come right by themselves', async () => {
    const rows = 200;
    const at = { doc: sheet.doc, sheet: 'Sheet1' };
    await sheet.values(
      `D1:D${rows}`,
      Array.from({ length: rows }, (_, row) => [1 + row]),
    );
    await sheet.values('F1', [[2]]);
    await office.ask({
      do: 'fill_down',
      ...at,
      cells: `E1:E${rows}`,
      formula: '=FEED.SECONDS(D1;"gal";$F$1;"gal/min")',
    });
    await office.ask({ do: 'set_modified', doc: sheet.doc, to: false });
    process.kill(engines(office).at(-1)!, 'SIGSTOP');
    const held = await office.ask<number>({ do: 'timed', ...at, set: 'F1', to: 3, cells: `E1:E${rows}` });
    expect(held).toBeGreaterThan(1.5);
    expect(held).toBeLessThan(2.6);
    expect((await sheet.cell('E1')).error).toBe(NOT_AVAILABLE);
    expect((await sheet.cell(`E${rows}`)).error).toBe(NOT_AVAILABLE);
    expect(await timed(() => sheet.values('B1', [[2]]))).toBeLessThan(1);
    const right = await until(
      async () => Math.abs(Number((await sheet.cell(`E${rows}`)).value) - rows * 20) < 1e-6,
      15_000,
    );
    expect(right).toBe(true);
    expect((await sheet.cell('E1')).value).toBeCloseTo(20, 9);
  });

  test('that hangs before it has read a long range holds Calc no longer', async () => {
    const rows = 20_000;
    await sheet.values(
      `D1:E${rows}`,
      Array.from({ length: rows }, () => [1, 0.5]),
    );
    expect((await sheet.cell('A1')).value).toBeCloseTo(15, 9);
    process.kill(engines(office).at(-1)!, 'SIGSTOP');
    const held = await timed(() => sheet.put('B3', [`=FEED.NEED(D1:D${rows};E1:E${rows};"gal";"gal")`]));
    expect(held).toBeGreaterThan(1.5);
    expect(held).toBeLessThan(3);
    expect((await sheet.cell('B3')).error).toBe(NOT_AVAILABLE);
    const right = await until(async () => (await sheet.cell('B3')).value === rows / 2, 15_000);
    expect(right).toBe(true);
  });

  test('that the pane waits for is started again too, and the pane says what that means', async () => {
    expect(words(await pane())).toContain('Garden');
    const paneEngine = engines(office).at(-1)!;
    expect(engines(office)).toHaveLength(2);
    process.kill(paneEngine, 'SIGKILL');
    const told = async () => words(await pane());
    expect(await until(async () => (await told()).includes('stopped and was started again'), 5_000)).toBe(
      true,
    );
    expect(engines(office).length).toBeGreaterThan(2);
    const next = words(await pane({ kind: 'open', section: 'rig' }));
    expect(next).toContain('The garden comes first');
    expect(next).not.toContain('was started again');
    expect((await sheet.cell('A1')).value).toBeCloseTo(15, 9);
  });

  test('that hangs again when it is back is left alone', async () => {
    const stops = async (): Promise<void> => {
      process.kill(engines(office).at(-1)!, 'SIGSTOP');
      expect(await timed(() => sheet.values('B1', [[Math.random()]]))).toBeGreaterThan(1.5);
      expect((await sheet.cell('A1')).error).toBe(NOT_AVAILABLE);
    };
    await stops();
    expect(await until(async () => (await sheet.cell('A1')).error === 0, 15_000)).toBe(true);
    await stops();
    const before = engines(office).length;
    await pause(LONGER_THAN_A_RESTART);
    expect(await timed(() => sheet.values('B1', [[1.4]]))).toBeLessThan(1);
    expect(engines(office)).toHaveLength(before);
    await office.ask({ do: 'dispatch', doc: sheet.doc, command: 'vnd.wandcount:tryAgain' });
    expect(await until(async () => Math.abs(Number((await sheet.cell('A1')).value) - 30) < 1e-9, 5_000)).toBe(
      true,
    );
  });

  test('leaves no process behind when Calc ends, nor when Calc is killed', async () => {
    await pane();
    const ended = engines(office);
    expect(ended).toHaveLength(2);
    await office.end();
    expect(await until(() => !ended.some(alive), 5_000)).toBe(true);

    await open();
    await sheet.values('B1', [[0.7]]);
    expect((await sheet.shows(SECONDS)).value).toBeCloseTo(15, 9);
    const killed = engines(office);
    const log = logOf(office);
    const office_ = office.pids();
    for (const pid of office_) process.kill(pid, 'SIGKILL');
    expect(log).toContain('ready');
    expect(await until(() => !killed.some(alive), 5_000)).toBe(true);
  });

  test('that hangs is not left behind when Calc ends', async () => {
    await pane();
    const all = engines(office);
    expect(all).toHaveLength(2);
    for (const pid of all) process.kill(pid, 'SIGSTOP');
    const log = join(office.userFolder, 'wandcount.log');
    await office.ask({ do: 'set_modified', doc: sheet.doc, to: false });
    void office.ask({ do: 'end' }).catch(() => undefined);
    expect(await until(() => office.pids().length === 0, 10_000)).toBe(true);
    const left = all.filter(alive);
    for (const pid of left) process.kill(pid, 'SIGKILL');
    expect(left).toEqual([]);
    // None was started in their place.
    expect(readFileSync(log, 'utf8').match(/engine \d+ started/g)).toHaveLength(2);
  });
});

test('an engine that computes without end is not left behind when Calc is killed', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'wandcount-node-'));
  const flag = join(folder, 'spin');
  const spinning = join(folder, 'spinning.cjs');
  writeFileSync(
    spinning,
    `const { isMainThread } = require('node:worker_threads');
     const spin = () => { if (require('node:fs').existsSync(${JSON.stringify(flag)})) for (;;); };
     if (isMainThread) setInterval(spin, 50).unref();`,
  );
  await open({
    env: { WANDCOUNT_NODE: program(join(folder, 'node'), `exec ${NODE} -r '${spinning}' "$@"`) },
  });
  await sheet.values('B1', [[0.7]]);
  expect((await sheet.shows(SECONDS)).value).toBeCloseTo(15, 9);
  await pane();
  const all = engines(office);
  expect(all).toHaveLength(2);
  // The thread that watches over each comes some time after it; then each computes for good.
  const [few, little] = [all.map(threads), all.map(processorSeconds)];
  await until(() => all.every((pid, at) => threads(pid) > few[at]!), 5_000);
  writeFileSync(flag, '');
  expect(await until(() => all.every((pid, at) => processorSeconds(pid) > little[at]! + 0.2), 10_000)).toBe(
    true,
  );
  expect(all.filter(alive)).toEqual(all);
  for (const pid of office.pids()) process.kill(pid, 'SIGKILL');
  await until(() => !all.some(alive), 5_000);
  const left = all.filter(alive);
  for (const pid of left) process.kill(pid, 'SIGKILL');
  expect(left).toEqual([]);
  await office.end();
  rmSync(folder, { recursive: true });
});
