import { setTimeout as pause } from 'node:timers/promises';
import { afterAll, beforeAll, expect, test } from 'vitest';

import { sheetOf } from '../cells';
import { openDisplay, type Display } from './display';
import { startOffice, type Office } from '../office';

/* Long work in the sidebar of a real window: how far it is, and Stop. */

interface Control {
  readonly text: string;
  /** How far a bar is, thousandths. */
  readonly done: number | null;
}

const ROSES = 20_000;
/** Columns of the grower's that nobody asks for: they make the reading long. */
const REMARKS = Array.from({ length: 26 }, (_, index) => `Remark ${index + 1}`);
const LIST: readonly (readonly (string | number)[])[] = [
  ['Variety', 'Bed', 'Type', 'Qty', ...REMARKS],
  ...Array.from({ length: ROSES }, (_, row) => [
    `Rose ${row + 1}`,
    `Bed ${1 + Math.floor(row / 500)}`,
    ['HT', 'Floribunda', 'Shrub'][row % 3]!,
    1,
    ...REMARKS,
  ]),
];

let display: Display;
let office: Office;
let doc: string;

beforeAll(async () => {
  display = await openDisplay();
  office = await startOffice({ window: true, env: { ...display.env, SAL_USE_VCLPLUGIN: 'gtk3' } });
});
afterAll(async () => {
  await office?.end();
  display?.end();
});

const command = (name: string) => office.ask({ do: 'dispatch', doc, command: `vnd.wandcount:${name}` });
const panel = async (): Promise<readonly Control[]> =>
  (await office.ask<{ controls: Control[] }>({ do: 'job', doc, request: { panel: true } })).controls;

/** Opens a document with the long list, and its sidebar, which then reads the list. */
const openLongList = async (): Promise<void> => {
  doc = await office.ask<string>({ do: 'open_document' });
  await sheetOf(office, doc).values(`A1:AD${LIST.length}`, LIST);
  await display.expectKeysTo(/LibreOffice Calc/);
  await office.ask({ do: 'window_size', doc, width: 1_270, height: 870 });
  await command('show');
};

const SECONDS = 60;

/** What the sidebar shows again and again, up to the first time that it holds the words. */
const watched = async (words: string): Promise<(readonly Control[])[]> => {
  const seen: (readonly Control[])[] = [];
  const until = performance.now() + SECONDS * 1_000;
  while (performance.now() < until) {
    // A panel that is being opened is not there yet.
    const now = await panel().catch((): Control[] => []);
    seen.push(now);
    if (now.some(({ text }) => text.includes(words))) return seen;
    await pause(10);
  }
  throw new Error(
    `The sidebar did not say “${words}” within ${SECONDS} s, but: ${JSON.stringify(seen.at(-1))}`,
  );
};

/** Every sentence that stood over a bar, with how far the bar was and what was under it. */
const progress = (seen: readonly (readonly Control[])[]) =>
  seen.flatMap((controls) => {
    const at = controls.findIndex(({ done }) => done !== null);
    if (at < 0) return [];
    return [{ says: controls[at - 1]!.text, done: controls[at]!.done!, below: controls[at + 1]!.text }];
  });

test('a long list is read and adopted under a sentence and a bar that say how far it is', async () => {
  await openLongList();
  const reading = progress(await watched('20,000 roses in 40 beds'));
  const rows = reading.flatMap(({ says, done }) => {
    const [, row] = /^Reading “Sheet1”: ([\d,]+) of 20,001 rows$/.exec(says) ?? [];
    return row === undefined ? [] : [{ row: Number(row.replaceAll(',', '')), done }];
  });
  for (const { row, done } of rows) expect(done).toBe(Math.floor((row / LIST.length) * 1_000));
  expect(new Set(rows.map(({ row }) => row)).size).toBeGreaterThan(3);
  expect(rows).toEqual([...rows].sort((a, b) => a.row - b.row));
  expect(reading.at(-1)).toEqual({ says: 'Looking through 20,001 rows', done: 1_000, below: 'Stop' });
  for (const { below } of reading) expect(below).toBe('Stop');

  await command('press.garden.adopt');
  const adopting = await watched('Made the plant inventory, 20,000 lines');
  const steps = progress(adopting);
  expect(steps.length).toBeGreaterThan(0);
  for (const { says, below } of steps) {
    expect(says).toMatch(/^(?:Reading “Sheet1”|Looking through 20,001 rows|Making the plant inventory)/);
    expect(below).toBe('Stop');
  }
  // Told above the button of that name.
  const writing = adopting.filter(
    (controls) => controls.filter(({ text }) => text === 'Make the plant inventory').length === 2,
  );
  // What is being written is written whole.
  expect(writing.length).toBeGreaterThan(0);
  expect(writing.flat().map(({ text }) => text)).not.toContain('Stop');
  expect(adopting.at(-1)!.every(({ done }) => done === null)).toBe(true);
  expect(await office.ask<string[]>({ do: 'sheet_names', doc })).toContain('Plants');
  await office.ask({ do: 'set_modified', doc, to: false });
  await office.ask({ do: 'close', doc });
});

test('Stop, pressed with the keyboard, stops the reading, and the workbook stays as it was', async () => {
  await openLongList();
  await watched('Stop');
  display.picture('gtk3-reading-a-long-list');
  await office.ask({ do: 'job', doc, request: { focus: 'Stop' } });
  display.act('key', 'space');
  const seen = await watched('Stopped reading “Sheet1”. Choose it again to read it.');
  for (const { done } of progress(seen)) expect(done).toBeLessThan(1_000);
  expect(seen.at(-1)!.map(({ text }) => text)).not.toContain('Stop');
  expect(await office.ask<string[]>({ do: 'sheet_names', doc })).toEqual(['Sheet1']);
  display.picture('gtk3-stopped');
});
