import { describe, expect, test, vi } from 'vitest';

import type { CellInput } from '../../addin/workbook/change';
import { memoryWorkbook, type MemoryWorkbook } from '../../addin/workbook/memoryWorkbook';
import { WorkbookError, type Workbook } from '../../addin/workbook/port';
import { createPane } from '../../taskpane/pane';
import type { HostEvent, HostServices } from '../../taskpane/services';

import { calculatingWorkbook } from './calculatingWorkbook';
import { drive } from './paneDriver';
import { UNTIDY } from './untidyList';

const services: HostServices = { today: () => '2026-05-03', measures: 'US' };

const open = async (workbook: Workbook, more: Partial<HostServices> = {}) => {
  const pane = createPane(workbook, { ...services, ...more });
  await pane.dispatch({ kind: 'workbookChanged' });
  return { pane, user: drive(pane) };
};

const adopted = async (more: Partial<HostServices> = {}) => {
  const memory = memoryWorkbook({ sheets: { List: UNTIDY } });
  const opened = await open(memory, { undo: () => Promise.resolve(void memory.undo()), ...more });
  await opened.user.press('Make the plant inventory');
  return { memory, ...opened };
};

const sheetsOf = async (memory: MemoryWorkbook) => (await memory.outline()).sheets.map(({ name }) => name);

const rowOfBush = async (memory: MemoryWorkbook): Promise<number> => {
  const { blocks } = await memory.read([{ sheet: 'Doses', row: 0, column: 0, rows: 20, columns: 1 }]);
  const row = blocks[0]?.cells.findIndex(([cell]) => cell?.value === 'Bush') ?? -1;
  if (row < 0) throw new Error('The Doses sheet has no row for Bush.');
  return row;
};

const doseOfBush = async (memory: MemoryWorkbook) => memory.cell('Doses', await rowOfBush(memory), 1).value;

describe('what a first-time user meets', () => {
  test('an empty workbook offers an empty garden', async () => {
    const { user } = await open(memoryWorkbook());
    expect(user.answer()).toBe('This workbook holds no list of roses yet');
    await user.press('Begin an empty garden');
    expect(user.answer()).toBe('The plant inventory is empty');
  });

  test('the other stops lead back to the garden', async () => {
    const { user } = await open(memoryWorkbook());
    await user.open('mix');
    expect(user.main()).toBe('Go to Garden');
    await user.press('Go to Garden');
    expect(user.answer()).toBe('This workbook holds no list of roses yet');
  });

  test('a round says everything that it needs, and leads there', async () => {
    const { user, pane } = await adopted();
    await user.open('round');
    expect(user.answer()).toBe('This round is not ready to plan');
    expect(user.main()).toBe('Go to Rig');
    expect(pane.view().section.blocks).toContainEqual({
      kind: 'steps',
      items: [
        'Rig: time a bucket at the wand, and say how big the barrel is',
        'Mix: say what goes into the barrel',
      ],
    });
  });

  test('the sheet that is open is guessed to hold the list, another one can be chosen', async () => {
    const sheets = { Shopping: [['Gloves'], ['Bucket']], List: UNTIDY } as Record<
      string,
      readonly (readonly CellInput[])[]
    >;
    const { user } = await open(memoryWorkbook({ sheets }));
    expect(user.field('Your list is on the sheet').value).toBe('Shopping');
    await user.type('Your list is on the sheet', 'List');
    expect(user.answer()).toMatch(/^348 roses in 3 beds/);
  });

  test('a guess is overruled and the roses are counted anew', async () => {
    const { user } = await open(memoryWorkbook({ sheets: { List: UNTIDY } }));
    await user.type('Qty holds', 'leftOut');
    expect(user.answer()).toMatch(/^6 roses in 3 beds/);
  });
});

describe('what was typed', () => {
  test('shows at once, before anything is waited for', async () => {
    const { pane, user } = await adopted();
    await user.open('rig');
    void pane.dispatch({ kind: 'type', field: 'rig.barrel', value: '6O' });
    expect(user.field('The barrel holds')).toMatchObject({
      value: '6O',
      error: 'The barrel holds: “6O” was given; use a number above 0.',
    });
  });

  test('outlives a look at another section and a change by hand', async () => {
    const { memory, pane, user } = await adopted();
    await user.open('rig');
    await user.type('The barrel holds', '55');
    await user.open('garden');
    memory.user.type('List', 3, 4, 41);
    await pane.dispatch({ kind: 'workbookChanged' });
    await user.open('rig');
    expect(user.field('The barrel holds').value).toBe('55');
  });

  test('after a press is no part of it, and is kept', async () => {
    const { memory, user } = await adopted();
    await user.type('Dose for one Bush', '0.5');
    const pressed = user.press('Keep the doses');
    await user.type('Dose for one Bush', '0.55');
    await pressed;
    expect(user.field('Dose for one Bush').value).toBe('0.55');
    expect(await doseOfBush(memory)).toBe(0.5);
  });

  test('belongs to the size it was typed for, wherever its row goes', async () => {
    const { memory, pane, user } = await adopted();
    await user.type('Dose for one Bush', '0.5');
    memory.user.insertRows('Doses', await rowOfBush(memory), 1);
    await pane.dispatch({ kind: 'workbookChanged' });
    expect(user.field('Dose for one Bush').value).toBe('0.5');
    expect(user.field('Dose for one Large bush').value).toBe('0.75');
  });

  test('is in the cells once it is kept, and then the cells are what counts', async () => {
    const { memory, pane, user } = await adopted();
    await user.type('Dose for one Bush', '1/2');
    await user.press('Keep the doses');
    expect(user.field('Dose for one Bush').value).toBe('0.5');
    expect(await doseOfBush(memory)).toBe(0.5);
    memory.user.type('Doses', await rowOfBush(memory), 1, 0.65);
    await pane.dispatch({ kind: 'workbookChanged' });
    expect(user.field('Dose for one Bush').value).toBe('0.65');
  });
});

describe('a list of another kind', () => {
  test('with headings and no roses is told, is not adopted, and the workbook stays', async () => {
    const memory = memoryWorkbook({ sheets: { List: [['Variety', 'Bed', 'How many']] } });
    const { pane, user } = await open(memory);
    const before = memory.inspect();
    const { blocks } = pane.view().section;
    const actions = blocks.flatMap((block) => (block.kind === 'actions' ? block.actions : []));
    const adopt = actions.find(({ id }) => id === 'garden.adopt');
    expect(adopt?.disabled).toBeTruthy();
    await pane.dispatch({ kind: 'press', action: 'garden.adopt' });
    expect(user.says()).toBe(
      'No rose was read from this list yet: choose another sheet, or say what its columns hold.',
    );
    expect(adopt?.why).toBe(user.says());
    expect(memory.inspect()).toEqual(before);
  });

  test('of formulas is read by what they show, and its formulas stay', async () => {
    const list: CellInput[][] = [
      ['Variety', 'Bed', 'Class', 'How many'],
      [{ formula: '="Winter "&"Lantern"' }, 'Front', 'HT', { formula: '=1+1' }],
      ['Amber Kettle', 'Front', 'HT', 3],
      [{ formula: '=1/0' }, 'Front', 'HT', 1],
    ];
    const memory = memoryWorkbook({ sheets: { List: list } });
    const { pane, user } = await open(calculatingWorkbook(memory));
    expect(user.answer()).toMatch(/^5 roses in 1 bed/);
    expect(JSON.stringify(pane.view().section)).toContain('#DIV/0!');
    await user.press('Make the plant inventory');
    expect([4, 5].map((row) => memory.cell('Plants', row, 0).value)).toEqual([
      'Winter Lantern',
      'Amber Kettle',
    ]);
    expect(memory.cell('List', 1, 3).formula).toBe('=1+1');
  });
});

test('a list that was edited since it was looked at is shown as it is now, and adopted by the next press', async () => {
  const memory = memoryWorkbook({ sheets: { List: UNTIDY } });
  const { user } = await open(memory);
  memory.user.type('List', 3, 4, 41);
  await user.press('Make the plant inventory');
  expect(user.says()).toBe(
    '“List” has changed since it was read. Look how it is read now, then press again.',
  );
  expect(user.answer()).toMatch(/^349 roses in 3 beds/);
  expect(await sheetsOf(memory)).toEqual(['List']);
  await user.press('Make the plant inventory');
  expect(user.says()).toMatch(/^Made the plant inventory, 5 lines\. 349 roses/);
});

test('a list whose sheet is gone is not mistaken for another one', async () => {
  const memory = memoryWorkbook({ sheets: { List: UNTIDY, Shopping: [['Gloves'], ['Bucket']] } });
  const { user } = await open(memory);
  memory.user.deleteSheet('List');
  await user.press('Make the plant inventory');
  expect(user.says()).toBe('Choose the sheet with your list first.');
  expect(user.field('Your list is on the sheet').value).toBe('Shopping');
  expect(await sheetsOf(memory)).toEqual(['Shopping']);
});

describe('a rig that cannot be kept', () => {
  test('names the first wrong field as the fields stand', async () => {
    const { user } = await adopted();
    await user.open('rig');
    await user.type('The barrel holds', 'large');
    await user.type('The bucket holds', 'small');
    await user.press('Keep this rig');
    expect(user.says()).toMatch(/^The bucket holds: “small” was given/);
  });

  test('for its heel takes up all that is filled writes nothing', async () => {
    const { user } = await adopted();
    await user.open('rig');
    await user.type('The barrel holds', '60');
    await user.type('Heel', '60');
    await user.type('Time 1', '46');
    await user.press('Keep this rig');
    expect(user.says()).toBe(
      'Heel: 60 gal was given; use less than the 60 gal that the barrel holds at its fill line.',
    );
    expect(user.steps()['rig']).toBe('empty');
  });
});

describe('undo', () => {
  test('takes back what an action wrote and says what that was', async () => {
    const { memory, pane, user } = await adopted();
    expect(await sheetsOf(memory)).toContain('Plants');
    expect(pane.view().message?.undo).toBe(true);
    await pane.dispatch({ kind: 'press', action: 'undo' });
    expect(await sheetsOf(memory)).toEqual(['List']);
    expect(user.says()).toMatch(/^Taken back: Made the plant inventory/);
    expect(pane.view().message?.undo).toBeUndefined();
  });

  test('goes with its message once the workbook changed by hand: it would take that back', async () => {
    const { pane } = await adopted();
    await pane.dispatch({ kind: 'workbookChanged' });
    expect(pane.view().message).toBeUndefined();
  });

  test('takes back nothing where somebody edited the garden since', async () => {
    const { memory, pane, user } = await adopted();
    memory.user.type('Doses', await rowOfBush(memory), 1, 0.65);
    await pane.dispatch({ kind: 'press', action: 'undo' });
    expect(user.says()).toBe('The workbook was edited since. Take the last steps back with its own Undo.');
    expect(await doseOfBush(memory)).toBe(0.65);
  });

  test('is not offered by a host that has none', async () => {
    const { pane, user } = await open(memoryWorkbook({ sheets: { List: UNTIDY } }));
    await user.press('Make the plant inventory');
    expect(pane.view().message?.undo).toBeUndefined();
  });
});

describe('long work', () => {
  const long = Array.from({ length: 30_000 }, (_, row) => [`Rose ${row}`, 'Field', 'HT', 1]);

  test('shows how far it is and can be stopped; nothing is written then', async () => {
    const memory = memoryWorkbook({ sheets: { List: [['Variety', 'Bed', 'Type', 'Qty'], ...long] } });
    const pane = createPane(memory, services);
    const seen: number[] = [];
    pane.subscribe(() => {
      const { busy } = pane.view();
      if (busy?.share === undefined) return;
      seen.push(busy.share);
      if (seen.length === 3) void pane.dispatch({ kind: 'press', action: 'stop' });
    });
    await pane.dispatch({ kind: 'workbookChanged' });
    expect(seen.length).toBeGreaterThanOrEqual(3);
    expect(pane.view().message?.text).toBe('Stopped reading “List”. Choose it again to read it.');
    expect(pane.view().busy).toBeUndefined();
    expect(await sheetsOf(memory)).toEqual(['List']);
  });

  test('a list of 30,000 rows is read to its end', async () => {
    const memory = memoryWorkbook({ sheets: { List: [['Variety', 'Bed', 'Type', 'Qty'], ...long] } });
    const { user } = await open(memory);
    expect(user.answer()).toMatch(/^30,000 roses in 1 bed/);
  });

  test('what a long list means is worked out in steps, each of which lets the host breathe and can be stopped', async () => {
    const memory = memoryWorkbook({ sheets: { List: [['Variety', 'Bed', 'Type', 'Qty'], ...long] } });
    const pane = createPane(memory, services);
    let looking = 0;
    pane.subscribe(() => {
      const { busy, section } = pane.view();
      if (busy?.text !== 'Looking through 30,001 rows' || section.answer !== 'Reading your list…') return;
      looking += 1;
      if (looking === 12) void pane.dispatch({ kind: 'press', action: 'stop' });
    });
    await pane.dispatch({ kind: 'workbookChanged' });
    expect(looking).toBe(12);
    expect(pane.view().message?.text).toBe('Stopped reading “List”. Choose it again to read it.');
  });

  test('a second press while the first is under way is one wish', async () => {
    const { memory, user } = await adopted();
    const applied = vi.spyOn(memory, 'apply');
    await user.type('Dose for one Bush', '0.5');
    await Promise.all([user.press('Keep the doses'), user.press('Keep the doses')]);
    expect(applied).toHaveBeenCalledTimes(1);
  });
});

describe('formulas that take long', () => {
  const STILL = 'The sheets are written; the grid is still working out their formulas.';

  test('the action is done and says that its formulas are still worked out, until they are', async () => {
    let calculating = true;
    const { pane, user } = await adopted({ calculating: () => calculating });
    expect(user.says()).toMatch(/^Made the plant inventory, .*\. The sheets are written; the grid is still/);
    expect(pane.view().message).toMatchObject({ tone: 'good', undo: true });
    expect(pane.view().busy).toBeUndefined();
    calculating = false;
    await pane.dispatch({ kind: 'calculated' });
    expect(user.says()).toMatch(/^Made the plant inventory, /);
    expect(user.says()).not.toContain(STILL);
    expect(pane.view().message?.undo).toBe(true);
  });

  test('what is taken back says nothing of them', async () => {
    const { pane, user } = await adopted({ calculating: () => true });
    await pane.dispatch({ kind: 'press', action: 'undo' });
    expect(user.says()).toMatch(/^Taken back: Made the plant inventory/);
    expect(user.says()).not.toContain(STILL);
  });
});

describe('what goes wrong', () => {
  test('a workbook that refuses says so, and what was typed stays', async () => {
    const { memory, pane, user } = await adopted();
    vi.spyOn(memory, 'apply').mockRejectedValueOnce(new WorkbookError('The sheet Doses is protected.'));
    await user.type('Dose for one Bush', '0.5');
    await user.press('Keep the doses');
    expect(pane.view().message).toEqual({ tone: 'warning', text: 'The sheet Doses is protected.' });
    expect(user.field('Dose for one Bush').value).toBe('0.5');
  });

  test('a fault of the program is said, told to the host, and the pane goes on', async () => {
    const { memory, pane, user } = await adopted();
    vi.spyOn(memory, 'apply').mockRejectedValueOnce(new TypeError('undefined is not a function'));
    await user.type('Dose for one Bush', '0.5');
    await expect(user.press('Keep the doses')).rejects.toThrow(TypeError);
    expect(pane.view().message?.tone).toBe('warning');
    await user.press('Keep the doses');
    expect(user.says()).toBe('Kept the doses.');
  });

  test('a cell that cannot be read is named on its section and in the way', async () => {
    const { memory, pane, user } = await adopted();
    memory.user.type('Plants', 5, 3, 'lots');
    await pane.dispatch({ kind: 'workbookChanged' });
    const garden = pane.view().steps.find(({ id }) => id === 'garden');
    expect(garden?.state.kind).toBe('attention');
    await user.open('garden');
    expect(pane.view().section.blocks[0]).toMatchObject({
      kind: 'text',
      tone: 'warning',
      text: expect.stringContaining('lots'),
    });
  });
});

test('what a list’s column holds is given to the column chosen last', async () => {
  const { user } = await open(memoryWorkbook({ sheets: { List: UNTIDY } }));
  const held = () => user.table('What each column holds').map(([column, holds]) => `${column} ${holds}`);
  const guessed = held();
  expect(guessed).toContain('Variety [plant]');
  await user.type('Bed holds', 'plant');
  expect(held()).toContain('Bed [plant]');
  await user.type('Variety holds', 'plant');
  expect(held()).toEqual(guessed);
  await user.type('Pot? holds', 'notes');
  await user.type('Type holds', 'notes');
  expect(held()).toEqual(expect.arrayContaining(['Pot? [notes]', 'Type [notes]']));
});

describe('the selected cell', () => {
  test('is explained when the host tells that it was selected', async () => {
    let tell: (event: HostEvent) => void = () => undefined;
    const formula = '=FEED.FILLS(-1,60,"gal")';
    const memory = memoryWorkbook({ sheets: { 'Round card': [[null], [null], [null, { formula }]] } });
    const { pane, user } = await open(calculatingWorkbook(memory), {
      watch: (listener) => {
        tell = listener;
        return () => undefined;
      },
      selected: () => Promise.resolve({ sheet: 'Round card', row: 2, column: 1, shows: '#VALUE!' }),
    });
    tell({ kind: 'selected', sheet: 'Round card', row: 2, column: 1 });
    await vi.waitFor(() =>
      expect(pane.view().section.blocks.at(-1)).toMatchObject({
        label: 'This cell: Round card, B3 shows #VALUE!',
      }),
    );
    await user.unfold('This cell');
    expect(pane.view().section.blocks.at(-1)).toMatchObject({
      blocks: [{ text: formula }, { text: 'need: -1 was given; use 0 or more.', tone: 'warning' }],
    });
  });

  test('what happens while a cell is looked at is kept', async () => {
    let looked = (): void => undefined;
    let slow = false;
    let asked = 0;
    const { pane, user } = await adopted({
      selected: () =>
        slow
          ? new Promise((resolve) => {
              asked += 1;
              looked = () => resolve(undefined);
            })
          : Promise.resolve(undefined),
    });
    expect(user.says()).toContain('Made the plant inventory');
    slow = true;
    const selected = pane.dispatch({ kind: 'selected', sheet: 'Rig', row: 0, column: 0 });
    await vi.waitFor(() => expect(asked).toBe(1));
    slow = false;
    const changed = pane.dispatch({ kind: 'workbookChanged' });
    looked();
    await Promise.all([selected, changed]);
    expect(user.says()).toBeUndefined();
  });

  test('the pane stops listening when it is closed', async () => {
    const stopped = vi.fn();
    const { pane } = await open(memoryWorkbook(), { watch: () => stopped });
    pane.close();
    expect(stopped).toHaveBeenCalledOnce();
  });
});

test('a view is plain JSON, so that it can cross a pipe', async () => {
  const { pane, user } = await adopted();
  for (const section of ['garden', 'rig', 'mix', 'round', 'log', 'tanks']) {
    await user.open(section);
    const view = pane.view();
    expect(JSON.parse(JSON.stringify(view))).toEqual(view);
  }
});
