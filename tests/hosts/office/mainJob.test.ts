import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import { BASELINE } from '../../../addin/hosts/office/baseline';
import type { Change, Edit } from '../../../addin/workbook/change';
import { memoryWorkbook } from '../../../addin/workbook/memoryWorkbook';
import type { CellState, Outline, Snapshot, Workbook } from '../../../addin/workbook/port';
import { usedArea } from '../../../addin/workbook/snapshot';
import { createPane } from '../../../taskpane/pane';
import { calculatingWorkbook } from '../../taskpane/calculatingWorkbook';
import { drive } from '../../taskpane/paneDriver';
import { UNTIDY } from '../../taskpane/untidyList';

import { openStub, type StubPage } from './openStub';

const LIST = 'Roses 2026';
const DAY = '2026-05-03';

let open: StubPage;
beforeAll(async () => {
  open = await openStub();
});
afterAll(() => open?.close());

const workbook: Workbook = {
  outline: () => open.stub<Outline>('outline'),
  read: (areas) => open.stub<Snapshot>('read', areas),
  apply: (change: Change) => open.stub('apply', change),
};

/** What a user does in the pane, whoever draws it. */
interface User {
  press(label: string): Promise<unknown>;
  type(label: string, value: string): Promise<unknown>;
}

/** From the list to the log: each press with what the pane then says or answers. */
const JOB: readonly {
  readonly type?: Record<string, string>;
  readonly press: string;
  readonly says?: RegExp;
}[] = [
  { press: 'Make the plant inventory', says: /^Made the plant inventory, 5 lines\. 348 roses in 3 beds/ },
  { press: 'Go on to Rig' },
  {
    type: { 'The barrel holds': '60', 'Time 1': '46,1', 'Time 2': '45.8', 'Time 3': '46.6' },
    press: 'Keep this rig',
    says: /^Kept the rig: 2\.6 gal\/min at the wand\.$/,
  },
  { press: 'Go on to Mix' },
  {
    type: { Name: 'Soluble powder 20-20-20', "Label's greatest rate": '1', 'Nitrogen, N': '20' },
    press: 'Keep this product',
  },
  { type: { 'Rate of product 1': '1' }, press: 'Keep this mix' },
  { press: 'Go on to Round' },
  { type: { Day: DAY, Start: '07:00' }, press: 'Make the card', says: /^Made the card: 3 fills to 60 gal/ },
  { press: 'Log' },
  {
    type: { 'Left over': '5', Notes: '=cool and cloudy' },
    press: 'Write the log line',
    says: /^Wrote the round of 3 May 2026 into the log/,
  },
];

const inFrame = (): User => ({
  // The stops of the way tell their state beside their name.
  press: (label) =>
    (label === 'Log'
      ? open.pane.getByRole('button', { name: /^Log/ })
      : open.pane.getByRole('button', { name: label, exact: true })
    )
      .first()
      .click(),
  type: async (label, value) => {
    const field = open.pane.getByLabel(label, { exact: true }).first();
    await field.fill(value);
    await field.blur();
  },
});

const said = (): Promise<string> => open.pane.locator('[role="status"], [role="alert"]').allInnerTexts().then((all) => all.join('\n')); // prettier-ignore

/** The reference tells twelve figures of a number, an empty text as one, and truths as 0 and 1. */
const rounded = (cell: CellState): CellState => {
  const value = typeof cell.value === 'boolean' ? Number(cell.value) : cell.value;
  return {
    ...cell,
    value: typeof value === 'number' ? Number(value.toPrecision(9)) : value === '' ? null : value,
  };
};

const everything = async (book: Workbook) => {
  const outline = await book.outline();
  const areas = outline.sheets.flatMap(({ name }) => usedArea(outline, name) ?? []);
  const { blocks } = await book.read(areas);
  return {
    names: outline.names,
    sheets: Object.fromEntries(
      blocks.map(({ area, cells }) => [area.sheet, cells.map((line) => line.map(rounded))]),
    ),
  };
};

describe('the whole main job, through the Office adapter, on the grid', () => {
  test('begins in the pane of the production package, beside the list', async () => {
    const edits: Edit[] = [
      { kind: 'addSheet', sheet: LIST },
      { kind: 'write', sheet: LIST, row: 0, column: 0, cells: UNTIDY },
      { kind: 'activate', sheet: LIST, row: 0, column: 0 },
    ];
    await workbook.apply({ title: 'The list', edits });
    await open.stub('openPane');
    await open.pane.getByText('348 roses in 3 beds, read from 5 of 9 rows').first().waitFor();
    await open.shoot('1-list');
  });

  test('goes from the list to the log by what stands on the screen', async () => {
    const user = inFrame();
    for (const { type = {}, press, says } of JOB) {
      for (const [label, value] of Object.entries(type)) await user.type(label, value);
      await user.press(press);
      if (says) await expect.poll(said, { timeout: 30_000 }).toMatch(new RegExp(says.source, 'm'));
      if (press === 'Make the plant inventory' || press === 'Make the card' || press === 'Write the log line')
        await open.shoot(`2-${press.toLowerCase().replaceAll(' ', '-')}`);
    }
  });

  test('leaves the very sheets, names, formulas and values that the pane leaves in any workbook', async () => {
    const memory = memoryWorkbook({ sheets: { Sheet1: [], [LIST]: UNTIDY } });
    await memory.apply({ title: 'Go there', edits: [{ kind: 'activate', sheet: LIST, row: 0, column: 0 }] });
    const reference = calculatingWorkbook(memory);
    const pane = createPane(reference, { today: () => DAY, measures: 'US' });
    await pane.dispatch({ kind: 'workbookChanged' });
    const user = drive(pane);
    for (const { type = {}, press } of JOB) {
      for (const [label, value] of Object.entries(type)) await user.type(label, value);
      if (press === 'Log') await user.open('log');
      else await user.press(press);
    }
    pane.close();
    const [here, there] = [await everything(workbook), await everything(reference)];
    expect(Object.keys(here.sheets)).toEqual(Object.keys(there.sheets));
    expect(here.names).toEqual(there.names);
    for (const [sheet, cells] of Object.entries(there.sheets))
      expect(here.sheets[sheet], sheet).toEqual(cells);
  });

  test('had the functions of the add-in compute the sheets', async () => {
    expect(await open.stub<number>('calls')).toBeGreaterThan(50);
  });

  test('wrote each change in one request, and needed the newest of the declared sets', async () => {
    const used = await open.stub<[string, string][]>('used');
    expect(used.length).toBeGreaterThan(60);
    const { writes, request, answer } = await open.stub<Record<string, number>>('traffic');
    // One for each press that writes.
    expect(writes).toBe(JOB.filter(({ press }) => press !== 'Log' && !press.startsWith('Go on')).length);
    expect(Math.max(request!, answer!)).toBeLessThan(5 * 1024 * 1024);
    const newest = used.map(([, set]) => Number(set?.split('.')[1] ?? 0));
    expect(Math.max(...newest)).toBeGreaterThan(Number(BASELINE.ExcelApi.split('.')[1]) - 1);
  });

  test('asks to be there when the workbook is opened again', async () => {
    expect(await open.stub('startsWith')).toEqual(['Load']);
  });

  test('follows a dose that is changed in its cell, card totals and all', async () => {
    const before = await everything(workbook);
    const fills = before.names['Card_made_up']!;
    const value = async () => (await workbook.read([fills])).blocks[0]!.cells[0]![0]!.value as number;
    const was = await value();
    const doses = before.names['Wandcount_Doses'] ?? before.names['Doses'];
    const area = doses ?? Object.values(before.names).find(({ sheet }) => sheet === 'Doses')!;
    const cells = before.sheets['Doses']!;
    const row = cells.findIndex((line) => line[0]?.value === 'Large bush');
    const column = cells[row]!.findIndex(({ value: dose }) => dose === 0.75);
    expect([row, column, area.sheet]).toEqual([expect.any(Number), expect.any(Number), 'Doses']);
    await workbook.apply({
      title: 'By hand',
      edits: [{ kind: 'write', sheet: 'Doses', row, column, cells: [[1]] }],
    });
    expect(await value()).toBeGreaterThan(was);
  });

  test('says where to print, as there is no button for it', async () => {
    await open.pane.getByRole('button', { name: /^Round/ }).click();
    await open.pane.getByText('To print the card, go to its sheet and choose File, then Print.').waitFor();
    expect(await open.pane.getByRole('button', { name: /print/i }).count()).toBe(0);
  });

  test('comes back in a new runtime with what the sheets say, as the pane stood', async () => {
    const food = open.pane.locator('details', { hasText: 'Food for each plant' });
    const isOpen = () => food.evaluate((element) => (element as HTMLDetailsElement).open);
    expect(await isOpen()).toBe(false);
    await food.locator('summary').click();
    await expect
      .poll(() => open.stub('keptSettings'))
      .toMatchObject({ pane: { section: 'round', folds: { 'round.food': true } } });
    await open.stub('reopenPane');
    await open.pane.getByRole('heading', { name: 'Round' }).waitFor();
    await expect.poll(() => open.pane.locator('body').innerText()).toContain('348');
    expect(await isOpen()).toBe(true);
    await open.shoot('3-reopened');
    await food.locator('summary').click();
    await open.pane.getByRole('button', { name: /^Rig/ }).click();
    await open.stub('reopenPane');
    await open.pane.getByRole('heading', { name: 'Rig' }).waitFor();
    await open.pane.getByRole('button', { name: /^Round/ }).click();
    expect(await isOpen()).toBe(false);
  });

  test('is light or dark as the program is', async () => {
    const theme = () => open.pane.locator('html').getAttribute('data-theme');
    expect(await theme()).toBe('light');
    await open.stub('theme', '#262626');
    await expect.poll(theme).toBe('dark');
    await open.shoot('4-dark');
    await open.stub('theme', '#FFFFFF');
    await expect.poll(theme).toBe('light');
  });

  test('has buttons that work without the pane, and say what they did', async () => {
    await open.stub('press', 'showCard');
    expect((await workbook.outline()).active).toBe('Round card');
    await open.stub('press', 'repairFormulas');
    expect(await open.stub('said')).toEqual(['No FEED formula shows #NAME?, so nothing was written.']);
    await open.stub('press', 'makeCard');
    expect(await open.stub('said')).toHaveLength(1);
  });

  test('said nothing of errors and asked for nothing elsewhere', () => {
    expect(open.troubles).toEqual([]);
  });
});
