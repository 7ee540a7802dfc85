import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';

import { memoryWorkbook, type MemoryWorkbook } from '../../addin/workbook/memoryWorkbook';
import { SHAPE } from '../../addin/workbook/shapes';
import { SHAPE_CELL } from '../../addin/workbook/sheets/settings';
import { actions } from '../../taskpane/actions/actionNamed';
import { createPane, type Pane } from '../../taskpane/pane';
import { SECTION_IDS } from '../../taskpane/state';
import type { Block } from '../../taskpane/view';
import { EARLIER } from '../workbook/earlierFiles';
import { newGardenWorkbook } from '../workbook/gardens';
import { savedBook } from '../workbook/savedBook';

import { calculatingWorkbook } from './calculatingWorkbook';
import { drive, wordsOf } from './paneDriver';

const open = async (memory: MemoryWorkbook) => {
  const pane = createPane(calculatingWorkbook(memory), {
    today: () => '2026-06-07',
    measures: 'US',
    print: async () => undefined,
  });
  await pane.dispatch({ kind: 'workbookChanged' });
  return { memory, pane, user: drive(pane) };
};
const kept = async (name: string) => open(await savedBook(readFileSync(join(EARLIER, name))));

const shapeCell = async (memory: MemoryWorkbook) => (await memory.outline()).names[SHAPE_CELL]!;

describe('a workbook of an earlier program', () => {
  test('says nothing of what it never had, and gets it in the step of the next action', async () => {
    const { memory, pane, user } = await kept('before-live-card/inventory.workbench.xlsx');
    for (const section of SECTION_IDS) {
      await user.open(section);
      expect(wordsOf(pane.view()).filter((words) => words.includes('had more once'))).toEqual([]);
    }
    const before = memory.inspect();
    await user.open('garden');
    await user.type('Dose for one Bush', '0.5');
    await user.press('Keep the doses');
    expect(user.says()).toMatch(
      /^Kept the doses\. Added what this program keeps besides: .*the line “Shape of the sheets” on Settings\. Brought formulas up to date on Plants\.$/,
    );
    const { sheet, row, column } = await shapeCell(memory);
    expect(memory.cell(sheet, row, column).value).toBe(SHAPE);
    expect(memory.undo()).toBe(true);
    expect(memory.inspect()).toEqual(before);
  });

  test('is not told that it lost a line of the rig that it never had, and plans without it', async () => {
    const memory = await savedBook(
      readFileSync(join(EARLIER, 'before-live-card/whole-garden.workbench.xlsx')),
    );
    const { sheet, row } = (await memory.outline()).names['Rig_heel']!;
    memory.user.deleteRows(sheet, row, 1);
    const { pane, user } = await open(memory);
    await user.open('rig');
    expect(wordsOf(pane.view()).filter((words) => words.includes('any more'))).toEqual([]);
    await user.open('round');
    await user.press('Make the card');
    expect(user.says()).toMatch(/the line “Heel” on Rig/);
  });

  test('makes a card and a what-if without anything being kept first', async () => {
    const { user } = await kept('before-live-card/whole-garden.workbench.xlsx');
    await user.open('tanks');
    await user.press('Write the what-if sheet');
    expect(user.says()).toMatch(/^Wrote the barrels side by side.* Brought formulas up to date on Mix\./);
    await user.open('round');
    await user.press('Make the card');
    expect(user.says()).not.toMatch(/Added|Brought|Put back/);
  });
});

describe('what the user took away of a garden', () => {
  const taken = async () => {
    const memory = await newGardenWorkbook();
    const notes = [
      ...memory
        .inspect()
        .sheets.find(({ name }) => name === 'Plants')!
        .cells.get(3)!,
    ].find(([, { value }]) => value === 'Notes')!;
    memory.user.deleteColumns('Plants', notes[0], 1);
    memory.user.deleteSheet('Mix');
    return open(memory);
  };

  test('is offered in words, stays away meanwhile, and comes back by the button', async () => {
    const { memory, pane, user } = await taken();
    const had =
      'The sheets had more once: the sheet “Mix” and the column “Notes” on Plants. It can be put back, without what stood in it.';
    expect(wordsOf(pane.view())).toContain(had);
    await user.press('Keep the doses');
    expect(user.says()).toBe('Kept the doses.');
    expect(wordsOf(pane.view())).toContain(had);
    await user.press('Put it back');
    expect(user.says()).toBe('Put back the sheet “Mix” and the column “Notes” on Plants.');
    expect(wordsOf(pane.view())).not.toContain(had);
    expect((await memory.outline()).names['Wandcount_Mix']).toBeDefined();
  });
});

describe('a workbook of a newer program', () => {
  test('is said to be one on every section, and nothing that is pressed is written', async () => {
    const { memory, pane, user } = await kept('live-card/whole-garden.workbench.xlsx');
    await user.open('garden');
    await user.type('Dose for one Bush', '0.5');
    await user.press('Keep the doses');
    const { sheet, row, column } = await shapeCell(memory);
    memory.user.type(sheet, row, column, SHAPE + 1);
    await pane.dispatch({ kind: 'workbookChanged' });
    const before = memory.inspect();
    const why =
      /^A newer program has worked on these sheets \(Settings, cell B\d+\), so this one only reads them/;
    for (const section of SECTION_IDS) {
      await user.open(section);
      expect(wordsOf(pane.view()).filter((words) => why.test(words))).toHaveLength(1);
    }
    expect(user.steps()).toMatchObject({ garden: 'ready', rig: 'ready', mix: 'ready', round: 'ready' });
    await user.open('garden');
    for (const action of Object.keys(actions)) {
      await pane.dispatch({ kind: 'press', action });
      if (action !== 'round.print') expect(pane.view().message?.tone, action).toBe('warning');
    }
    await user.press('Keep the doses');
    expect(user.says()).toMatch(why);
    expect(memory.inspect()).toEqual(before);
  });
});

describe('a garden with nothing in it', () => {
  /** What sentences send to, and the button or fold that it is. */
  const SENT: readonly (readonly [RegExp, string])[] = [
    [/plant inventory from|adopt the list/i, 'Make the plant inventory'],
    [/adopt a(nother)? list/i, 'Adopt another list'],
    [/begin an empty garden/i, 'Begin an empty garden'],
    [/put it back/i, 'Put it back'],
  ];
  const labelsIn = (blocks: readonly Block[]): string[] =>
    blocks.flatMap((block) => {
      if (block.kind === 'more') return [block.label, ...labelsIn(block.blocks)];
      return block.kind === 'actions' ? block.actions.map(({ label }) => label) : [];
    });
  const toured = async (pane: Pane) => {
    const [words, labels] = [[] as string[], [] as string[]];
    for (const section of SECTION_IDS) {
      await pane.dispatch({ kind: 'open', section });
      const view = pane.view();
      words.push(...wordsOf(view), view.section.answer, view.next?.says ?? '');
      labels.push(...labelsIn(view.section.blocks));
    }
    for (const action of Object.keys(actions).filter((id) => !labels.includes(id))) {
      if (['garden.new', 'garden.adopt', 'doses.keep', 'beds.keep', 'rig.keep'].includes(action)) continue;
      await pane.dispatch({ kind: 'press', action });
      words.push(pane.view().message?.text ?? '');
    }
    return { words, labels };
  };

  const garden = async (list: boolean) => {
    const memory = list
      ? memoryWorkbook({
          sheets: {
            List: [
              ['Rose', 'Bed', 'How many'],
              ['Ada', 'East', 2],
            ],
          },
        })
      : memoryWorkbook();
    return open(memory);
  };
  const begun = async (list: boolean, lost?: string) => {
    const opened = await garden(list);
    if (list) await opened.user.unfold('Begin without a list');
    await opened.user.press('Begin an empty garden');
    if (lost !== undefined) opened.memory.user.deleteSheet(lost);
    await opened.pane.dispatch({ kind: 'workbookChanged' });
    return opened;
  };

  test.each([
    ['an empty workbook', () => garden(false)],
    ['a list', () => garden(true)],
    ['an empty garden', () => begun(false)],
    ['an empty garden beside a list', () => begun(true)],
    ['an empty garden without its mix', () => begun(false, 'Mix')],
  ])('%s is sent to no button that it does not have', async (_what, begin) => {
    const { pane } = await begin();
    const { words, labels } = await toured(pane);
    for (const [sends, label] of SENT)
      if (!labels.includes(label)) expect(words.filter((text) => sends.test(text))).toEqual([]);
  });
});
