import { describe, expect, test } from 'vitest';

import { memoryWorkbook, type MemoryWorkbook } from '../../addin/workbook/memoryWorkbook';
import { actions } from '../../taskpane/actions/actionNamed';
import { createPane, type Pane } from '../../taskpane/pane';
import { SECTION_IDS } from '../../taskpane/state';
import type { Button, Block } from '../../taskpane/view';

import { calculatingWorkbook } from './calculatingWorkbook';
import { drive } from './paneDriver';
import { UNTIDY } from './untidyList';

/* A menu or a ribbon has a button at all times: pressed where the pane has none, it must say why and write nothing. */

interface Opened {
  readonly memory: MemoryWorkbook;
  readonly pane: Pane;
  readonly user: ReturnType<typeof drive>;
}

const open = async (memory: MemoryWorkbook): Promise<Opened> => {
  const pane = createPane(calculatingWorkbook(memory), {
    today: () => '2026-05-03',
    measures: 'US',
    print: () => Promise.resolve(),
  });
  await pane.dispatch({ kind: 'workbookChanged' });
  return { memory, pane, user: drive(pane) };
};

const listOpen = () => open(memoryWorkbook({ sheets: { List: UNTIDY } }));

const adopted = async (): Promise<Opened> => {
  const opened = await listOpen();
  await opened.user.press('Make the plant inventory');
  return opened;
};

const withProducts = async (): Promise<Opened> => {
  const opened = await adopted();
  const { user } = opened;
  await user.open('mix');
  await user.type('Name', 'Seaweed');
  await user.press('Keep this product');
  await user.type('Product 1', '');
  await user.open('garden');
  return opened;
};

const buttonsIn = (blocks: readonly Block[]): Button[] =>
  blocks.flatMap((block) => {
    if (block.kind === 'more') return buttonsIn(block.blocks);
    return block.kind === 'actions' ? block.actions : [];
  });

/** Buttons that can be pressed, in all sections and under folds that are closed; the garden is shown afterwards. */
const offeredIn = async (pane: Pane): Promise<ReadonlySet<string>> => {
  const found: Button[] = [];
  for (const section of [...SECTION_IDS].reverse()) {
    await pane.dispatch({ kind: 'open', section });
    found.push(...buttonsIn(pane.view().section.blocks));
  }
  return new Set(found.filter(({ disabled }) => !disabled).map(({ id }) => id));
};

const FIRST_GARDEN = 'Make the plant inventory from your list first, or begin an empty garden.';
const EMPTY_GARDEN = 'Begin an empty garden first, and type your roses into its Plants sheet.';
const MADE =
  'The plant inventory is made already. To add a list to it, open “Adopt another list” under Garden first.';
const BEGUN = 'This workbook holds a garden already: type more roses into its Plants sheet.';
const WHOLE = 'Nothing is missing on the sheets.';
const NO_RIG =
  'This round is not ready to plan. First, under Rig: time a bucket at the wand, and say how big the barrel is.';
const NO_BARREL = 'Barrel: nothing was given; use what it holds, filled to the brim.';
const offered = undefined;

const STATES: Readonly<
  Record<string, readonly [() => Promise<Opened>, Readonly<Record<string, string | undefined>>]>
> = {
  'a list is open and not adopted': [
    listOpen,
    {
      'garden.adopt': offered,
      'garden.new': offered,
      'garden.restore': FIRST_GARDEN,
      'doses.keep': FIRST_GARDEN,
      'beds.keep': FIRST_GARDEN,
      'rig.keep': FIRST_GARDEN,
      'mix.keep': FIRST_GARDEN,
      'product.keep': FIRST_GARDEN,
      'round.card': FIRST_GARDEN,
      'round.print': FIRST_GARDEN,
      'log.write': FIRST_GARDEN,
      'tanks.write': FIRST_GARDEN,
    },
  ],
  'the workbook is empty': [
    () => open(memoryWorkbook()),
    {
      'garden.adopt':
        'This workbook holds no list of roses yet: open the workbook with your list, or begin an empty garden.',
      'garden.new': offered,
      'garden.restore': EMPTY_GARDEN,
      'doses.keep': EMPTY_GARDEN,
      'beds.keep': EMPTY_GARDEN,
      'rig.keep': EMPTY_GARDEN,
      'mix.keep': EMPTY_GARDEN,
      'product.keep': EMPTY_GARDEN,
      'round.card': EMPTY_GARDEN,
      'round.print': EMPTY_GARDEN,
      'log.write': EMPTY_GARDEN,
      'tanks.write': EMPTY_GARDEN,
    },
  ],
  'the garden is adopted and there is no product': [
    adopted,
    {
      'garden.adopt': MADE,
      'garden.new': BEGUN,
      'garden.restore': WHOLE,
      'doses.keep': offered,
      'beds.keep': offered,
      'rig.keep': offered,
      'mix.keep': 'A mix is made of products: add your first product under Mix.',
      'product.keep': offered,
      'round.card': NO_RIG,
      'round.print': 'There is no card to print: make the card first.',
      'log.write': 'There is no card to log: make the card first.',
      'tanks.write': NO_BARREL,
    },
  ],
  'there are products and none is chosen for the mix': [
    withProducts,
    {
      'garden.adopt': MADE,
      'garden.new': BEGUN,
      'garden.restore': WHOLE,
      'doses.keep': offered,
      'beds.keep': offered,
      'rig.keep': offered,
      'mix.keep': 'Choose a product that goes into the barrel first, and its rate.',
      'product.keep': offered,
      'round.card': NO_RIG,
      'round.print': 'There is no card to print: make the card first.',
      'log.write': 'There is no card to log: make the card first.',
      'tanks.write': NO_BARREL,
    },
  ],
};

describe.each(Object.entries(STATES))('where %s', (_state, [begin, wanted]) => {
  test('each button that the pane does not offer says what to do first, and writes nothing', async () => {
    const { memory, pane, user } = await begin();
    const before = memory.inspect();
    const buttons = await offeredIn(pane);
    const said: Record<string, string | undefined> = {};
    for (const action of Object.keys(actions)) {
      if (buttons.has(action)) {
        said[action] = undefined;
        continue;
      }
      await pane.dispatch({ kind: 'press', action });
      expect(pane.view().message?.tone, action).toBe('warning');
      said[action] = user.says();
    }
    expect(said).toEqual(wanted);
    expect(memory.inspect()).toEqual(before);
  });
});

test('a list that was closed again, or that changed while another section shows, is not adopted unseen', async () => {
  const { memory, pane, user } = await adopted();
  await user.unfold('Adopt another list');
  await user.open('rig');
  memory.user.type('List', 3, 4, 41);
  await pane.dispatch({ kind: 'workbookChanged' });
  const before = memory.inspect();
  await pane.dispatch({ kind: 'press', action: 'garden.adopt' });
  expect(user.says()).toBe('Open Garden first, and look at how your list is read.');
  await user.open('garden');
  await pane.dispatch({ kind: 'fold', block: 'garden.again', open: false });
  await pane.dispatch({ kind: 'press', action: 'garden.adopt' });
  expect(user.says()).toBe(MADE);
  expect(memory.inspect()).toEqual(before);
});
