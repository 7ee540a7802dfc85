import { describe, expect, test } from 'vitest';

import { CARD } from '../../addin/workbook/card/cardNames';
import type { CardReading } from '../../addin/workbook/card/readCard';
import type { Garden } from '../../addin/workbook/garden';
import type { LoggedRound } from '../../addin/workbook/log/logRound';
import type { PaneState } from '../../taskpane/state';
import type { Block, Field, View } from '../../taskpane/view';
import { viewOf } from '../../taskpane/way';

import { paneOn, readyGarden } from './gardens';
import { wordsOf } from './paneDriver';

const shown = (
  section: PaneState['section'],
  garden: Partial<Garden> = {},
  more: Partial<PaneState> = {},
): View => viewOf(paneOn(section, { ...readyGarden, ...garden }, more));

const answer = (...given: Parameters<typeof shown>): string => shown(...given).section.answer;

const fieldsOf = ({ section }: View): Field[] => {
  const inside = (blocks: readonly Block[]): Field[] =>
    blocks.flatMap((block): Field[] => {
      if (block.kind === 'fields') return [...block.fields];
      if (block.kind === 'more') return inside(block.blocks);
      return block.kind === 'table'
        ? block.table.rows.flatMap((row) => row.filter((cell) => typeof cell !== 'string'))
        : [];
    });
  return inside(section.blocks);
};

const errors = (view: View): string[] => fieldsOf(view).flatMap(({ error }) => error ?? []);

const step = (view: View, id: string) => view.steps.find((one) => one.id === id)?.state;

const rig = (over: Partial<Garden['rig']>): Partial<Garden> => ({ rig: { ...readyGarden.rig, ...over } });

describe('the garden answers', () => {
  test('with roses, beds and the stations they are fed from', () => {
    expect(answer('garden')).toBe('140 roses in 2 beds');
    const beds = [readyGarden.beds[0]!, { ...readyGarden.beds[1]!, station: 'B' }];
    expect(answer('garden', { beds })).toBe('140 roses in 2 beds, fed from 2 stations');
  });

  test('with a size that has plants and no dose', () => {
    const view = shown('garden', { doses: [readyGarden.doses[0]!] });
    expect(step(view, 'garden')).toEqual({ kind: 'attention', why: 'no dose is given for Potted miniature' });
    expect(wordsOf(view)).toContain('No dose is given for Potted miniature: add it on the Doses sheet.');
  });

  test('with what could not be read, the first few in full', () => {
    const problems = Array.from({ length: 6 }, (_, row) => ({
      place: 'garden' as const,
      sheet: 'Plants',
      row,
      sentence: `Plants, row ${row + 1}: “lots” was given.`,
    }));
    const words = wordsOf(shown('garden', { problems }));
    expect(words.filter((one) => one.includes('lots'))).toHaveLength(4);
    expect(words).toContain('And 2 more cells like that.');
  });
});

describe('the rig answers', () => {
  test('with flow and what each fill gives', () => {
    expect(answer('rig', rig({ heel: { value: 2, unit: 'gal' }, fillLine: 0.95 }))).toBe(
      '2.5 gal/min at the wand, 55 gal from each fill',
    );
  });

  test('that a heel as big as the barrel leaves nothing', () => {
    expect(answer('rig', rig({ heel: { value: 60, unit: 'gal' } }))).toBe(
      'The heel takes up the whole barrel: nothing is left to pump.',
    );
  });

  test('that a rig with such a heel is not ready', () => {
    expect(step(shown('rig', rig({ heel: { value: 60, unit: 'gal' } })), 'rig')).toEqual({
      kind: 'attention',
      why: 'Heel: 60 gal was given; use less than the 60 gal that the barrel holds at its fill line.',
    });
  });

  // Times whose spread is known: 24.1, 24.6, 23.9 s come to 24.2 s ± 1.49 % (computed).
  test.each([
    ['', 'Type how many seconds each bucket took.'],
    ['24.1', 'Mean flow 4.98 gal/min from one bucket. Time it 3 times: one time tells no spread.'],
    ['24.1 24.6 23.9', 'Mean flow 4.96 gal/min, spread 1.5 %. 3 times are enough for ±5 %.'],
    ['20 24 28', 'Mean flow 5 gal/min, spread 16.7 %. For ±5 %, time it 43 more times, 46 in all.'],
    [
      '5 60',
      'Mean flow 3.69 gal/min, spread 119.7 %. The times are too far apart for ±5 %: check the hose and the pump, then time again.',
    ],
  ])('buckets of %s seconds: %s', (times, words) => {
    const seconds = times.split(' ').filter(Boolean).map(Number);
    const view = shown('rig', { timedBuckets: seconds });
    expect(wordsOf(view)).toContain(words);
  });

  test('there is always one more time to type, three at least', () => {
    const times = (view: View) => fieldsOf(view).filter(({ label }) => /^Time \d/.test(label)).length;
    expect(times(shown('rig'))).toBe(3);
    expect(
      times(shown('rig', {}, { typed: { 'rig.time.1': '24', 'rig.time.2': '24', 'rig.time.3': '25' } })),
    ).toBe(4);
  });

  test.each([
    [{ 'rig.barrel': '0' }, 'The barrel holds: “0” was given; use a number above 0.'],
    [
      { 'rig.barrel': '1,000' },
      'The barrel holds: “1,000” was given; use a number above 0, in plain figures such as 1000 or 2.5.',
    ],
    [
      { 'rig.barrel': '1e3' },
      'The barrel holds: “1e3” was given; use a number above 0, in plain figures such as 1000 or 2.5.',
    ],
    [{ 'rig.fillLine': '120' }, 'Filled to: “120” was given; use a number from 1 to 100.'],
    [{ 'rig.time.1': '-3' }, 'Time 1: “-3” was given; use a number above 0, up to 3,600.'],
    [
      { 'rig.betweenPlants': 'a few' },
      'From plant to plant: “a few” was given; use a number from 0 to 3,600.',
    ],
  ])('%j is refused beside its field', (typed, sentence) => {
    expect(errors(shown('rig', {}, { typed }))).toEqual([sentence]);
  });
});

describe('the mix answers', () => {
  test('with what one barrel takes', () => {
    expect(answer('mix')).toBe('60 gal takes 3 3/4 cups of Soluble powder 20-20-20');
  });

  // 57.6 tbsp: the nearest 58 would pass the label's 1 tbsp/gal.
  test('with a measure rounded down where the nearest would pass the label', () => {
    const view = shown('mix', rig({ barrel: { value: 57.6, unit: 'gal' } }));
    expect(view.section.answer).toBe('57.6 gal takes 3 1/2 cups 1 tbsp of Soluble powder 20-20-20');
    expect(JSON.stringify(view)).toContain('3 1/2 cups 1 tbsp, 1 % under, rounded down for the label');
  });

  test('with lines as they are typed, before they are kept', () => {
    const typed = { 'mix.product.1': 'Seaweed', 'mix.rate.1': '1/2', 'mix.rate.1.unit': 'fl oz/gal' };
    expect(answer('mix', {}, { typed })).toBe(
      '60 gal takes 3 3/4 cups of Soluble powder 20-20-20 and 3 3/4 cups of Seaweed',
    );
  });

  test('that a rate is above the label, and the way says so', () => {
    const mix = [{ ...readyGarden.mix[0]!, rate: { value: 1.5, unit: 'tbsp/gal' } }];
    const view = shown('mix', { mix });
    expect(step(view, 'mix')).toEqual({
      kind: 'attention',
      why: "Soluble powder 20-20-20 is above the label's greatest rate",
    });
    expect(wordsOf(view).join(' ')).toContain("is above its label's greatest rate");
    // No measure of it stands on the screen.
    expect(view.section.answer).toBe("Soluble powder 20-20-20 is above the label's greatest rate");
    expect(wordsOf(view).join(' ')).not.toMatch(/\d (?:cup|tbsp|tsp)/);
  });

  test('that a product without a solubility leaves the hot water unknown', () => {
    expect(wordsOf(shown('mix'))).toContain(
      'How much hot water Soluble powder 20-20-20 needs is not known: write how much dissolves in a litre under Products.',
    );
  });

  test('hot water is never told too low', () => {
    // 60 tbsp × 14.787 mL × 0.9 g/mL = 798.5 g; ÷ (350 × 0.8) g/L = 2.852 L = 3.0133 qt (computed).
    const products = [{ ...readyGarden.products[0]!, solubility: 350 }];
    expect(wordsOf(shown('mix', { products }))).toContain(
      'Dissolve the powders in at least 3.25 qt of hot water first.',
    );
  });
});

const card: CardReading = {
  sheet: 'Round card',
  date: 46145,
  start: 7 / 24,
  finish: 8 / 24,
  style: 'full',
  leaveOutUnread: false,
  mix: 'Powder',
  fills: 2,
  plants: 140,
  madeUp: 86,
  need: 85,
  unit: 'gal',
  products: [],
};

describe('the round answers', () => {
  // 100 × 0.75 + 40 × 0.25 = 85 gal.
  test('with fills, measure and time', () => {
    expect(answer('round')).toBe(
      '1 fill to 60 gal and one to 25 gal, 3 3/4 cups of Soluble powder 20-20-20 in the first, about 1 h 10 min',
    );
  });

  test('with equal fills, where the same is measured each time', () => {
    const typed = { 'round.style': 'equal' };
    expect(answer('round', {}, { typed })).toBe(
      '2 fills of 42.5 gal, 2 1/2 cups 2 tbsp of Soluble powder 20-20-20 each, about 1 h 10 min',
    );
  });

  test('that an amount is too little to measure, and beside each fill the part of a stock that it is', () => {
    const mix = [{ ...readyGarden.mix[0]!, rate: { value: 0.0005, unit: 'tbsp/gal' } }];
    const view = shown('round', { mix });
    expect(view.section.answer).toBe(
      '1 fill to 60 gal and one to 25 gal, Soluble powder 20-20-20 too little to measure by itself, about 1 h 10 min',
    );
    expect(JSON.stringify(view.section.blocks)).toMatch(
      /too little to measure: [\w/ ]+ in [\w/ ]+ of water, [\w/ ]+ of that/,
    );
    expect(wordsOf(view).join(' ')).not.toMatch(/was given/);
  });

  test('with the reason that a rate above the label needs, and plans once it is given', () => {
    const mix = [{ ...readyGarden.mix[0]!, rate: { value: 1.5, unit: 'tbsp/gal' } }];
    const refused = shown('round', { mix });
    expect(refused.section.answer).toBe('This round cannot be planned yet');
    expect(fieldsOf(refused).map(({ label }) => label)).toContain('Why above the label?');
    expect(refused.next?.section).toBe('mix');
    const planned = shown('round', { mix }, { typed: { 'round.reason': 'trial bed' } });
    expect(planned.section.answer).toMatch(/^1 fill to 60 gal/);
    expect(wordsOf(planned)[0]).toContain('Reason given: “trial bed”');
  });

  test('plans without the plant rows that could not be read, if the user says so', () => {
    const problems = [
      { place: 'garden' as const, sheet: 'Plants', row: 9, sentence: 'Plants, row 10: “lots” was given.' },
    ];
    expect(answer('round', { problems })).toBe('This round cannot be planned yet');
    expect(answer('round', { problems }, { typed: { 'round.leaveOut': 'yes' } })).toMatch(
      /^1 fill to 60 gal/,
    );
  });

  test('carries the usual cautions', () => {
    const cautions = shown('round').section.blocks.find(({ kind }) => kind === 'cautions');
    expect(cautions?.kind === 'cautions' && cautions.items.length).toBeGreaterThanOrEqual(8);
  });

  test.each(['', '24:00', 'soon'])('a start of “%s” is refused beside its field', (start) => {
    const view = shown('round', {}, { typed: { 'round.start': start }, tried: ['round'] });
    expect(errors(view)).toHaveLength(1);
  });

  test('with the start of the last card, and with a morning hour before there is one', () => {
    const start = (more: Partial<PaneState>) =>
      fieldsOf(shown('round', {}, more)).find(({ label }) => label === 'Start')?.value;
    expect(start({})).toBe('07:00');
    expect(start({ card: { ...card, start: 17.25 / 24 } })).toBe('17:15');
  });
});

describe('the log answers', () => {
  const line: LoggedRound = {
    round: 1,
    date: 46145,
    mix: 'Powder',
    plants: 140,
    fills: 2,
    need: 85,
    madeUp: 86,
    leftOver: 3,
    unit: 'gal',
    notes: '',
  };

  test('that a card comes first', () => {
    expect(answer('log')).toBe('Make a card, feed by it, then log it here');
  });

  test('that a card without numbers is no card to log', () => {
    expect(answer('log', {}, { cardWaits: true })).toBe('The card has no numbers yet');
  });

  test('with the card, and what is left by its plan', () => {
    const view = shown('log', {}, { card });
    expect(view.section.answer).toBe('3 May 2026, 2 fills, 86 gal made up');
    expect(fieldsOf(view).find(({ label }) => label === 'Left over')?.value).toBe('1');
  });

  test('what the card says against itself, above the numbers taken from it', () => {
    const outOfDate = 'The round takes 3 fills now; this card was made for 2. Make the card again.';
    const warnings = (now: CardReading) =>
      shown('log', {}, { card: now }).section.blocks.filter(
        (block) => block.kind === 'text' && block.tone === 'warning',
      );
    expect(warnings({ ...card, outOfDate })).toEqual([{ kind: 'text', tone: 'warning', text: outOfDate }]);
    expect(warnings(card)).toEqual([]);
  });

  test('that more left over than was made up cannot be', () => {
    expect(errors(shown('log', {}, { card, typed: { 'log.leftOver': '90' } }))).toEqual([
      'Left over: “90” was given; use a number from 0 to 86.',
    ]);
  });

  test('that a card of an earlier day waits to be logged', () => {
    const view = shown('log', {}, { card, today: '2026-05-05' });
    expect(step(view, 'log')).toEqual({
      kind: 'attention',
      why: 'the round of 3 May 2026 is not logged yet',
    });
  });

  test('with the rounds before, against their plan', () => {
    const view = shown('log', {}, { card, log: { rounds: [line], problems: [] } });
    expect(view.section.answer).toBe('Logged: 3 May 2026, 2 fills, 86 gal made up');
    expect(JSON.stringify(view.section.blocks)).toContain('83 gal, 98 % of the plan');
    expect(step(view, 'log')).toEqual({ kind: 'ready', says: 'last round 3 May 2026' });
  });

  test('what was logged, where the card says something else since', () => {
    const now = { ...card, fills: 3, madeUp: 140 };
    const view = shown('log', {}, { card: now, log: { rounds: [line], problems: [] } });
    expect(view.section.answer).toBe('Logged: 3 May 2026, 2 fills, 86 gal made up');
  });
});

describe('a card is printed', () => {
  const area = { sheet: 'Round card', row: 0, column: 0, rows: 9, columns: 4 };
  const snapshot = { sheets: [], names: { [CARD]: area }, active: 'Round card', blocks: [] };
  const howToPrint = 'To print, choose Print.';
  const can = { undo: true, print: true };
  const buttons = ({ section }: View) =>
    section.blocks.flatMap((block) =>
      block.kind === 'actions' ? block.actions.map(({ label }) => label) : [],
    );

  test('with a button where the host prints', () => {
    const view = shown('round', {}, { snapshot, can });
    expect(buttons(view)).toContain('Print the card');
    expect(wordsOf(view)).not.toContain(howToPrint);
    expect(buttons(shown('round', {}, { can }))).not.toContain('Print the card');
  });

  test("by the program's own command where it does not, which the pane tells", () => {
    const without = { can: { undo: true, print: false }, howToPrint };
    const view = shown('round', {}, { snapshot, ...without });
    expect(buttons(view)).not.toContain('Print the card');
    expect(wordsOf(view)).toContain(howToPrint);
    expect(wordsOf(shown('round', {}, without))).not.toContain(howToPrint);
  });
});

describe('the barrels answer', () => {
  test('that none meets the limits', () => {
    expect(answer('tanks', {}, { typed: { 'tanks.mostWeight': '10' } })).toBe(
      'No barrel of these meets your limits',
    );
  });

  test('with the smallest within the limits, marked in the table', () => {
    const view = shown('tanks', {}, { typed: { 'tanks.mostFills': '2' } });
    expect(view.section.answer).toBe(
      '45 gal is the smallest that meets your limits: 2 fills, about 1 h 10 min',
    );
    const table = view.section.blocks.find((block) => block.kind === 'table');
    expect(table?.kind === 'table' && table.table.columns.map(({ label }) => label)).toContain('Moves');
    expect(table?.kind === 'table' && table.table.marked).toEqual([{ row: 1, word: 'smallest that fits' }]);
  });

  test('that a barrel under a dose cannot do it, and why', () => {
    const view = shown('tanks', {}, { typed: { 'tanks.size.1': '0.5' } });
    expect(wordsOf(view).find((words) => words.startsWith('0.5 gal:'))).toContain('Dose of size');
  });
});

describe('the way', () => {
  test('leads through what is missing, then to the card', () => {
    const next = (garden: Partial<Garden>, more?: Partial<PaneState>) => shown('garden', garden, more).next;
    const list = { ownSheets: [{ name: 'List', rows: 9, active: true }] };
    const has = { ...readyGarden.has, plants: false };
    expect(next({ plants: [], has })?.says).toBe('Begin an empty garden.');
    expect(next({ plants: [] })?.says).toBe('Type your roses into the Plants sheet.');
    expect(next({ plants: [], has }, list)).toEqual({
      section: 'garden',
      says: 'Make the plant inventory from your list.',
    });
    expect(next({ plants: [] }, list)?.says).toBe('Type your roses into the Plants sheet, or adopt a list.');
    expect(next(rig({ barrel: { unit: 'gal' }, flow: { unit: 'gal/min' } }))?.section).toBe('rig');
    expect(next(rig({ barrel: { unit: 'gal' } }))).toEqual({
      section: 'rig',
      says: 'Barrel: nothing was given; use what it holds, filled to the brim.',
    });
    expect(next({ mix: [] })?.section).toBe('mix');
    expect(next({})).toEqual({ section: 'round', says: 'Make the card for today.' });
  });
});
