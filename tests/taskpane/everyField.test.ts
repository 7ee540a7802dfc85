import { describe, expect, test } from 'vitest';

import { CARD } from '../../addin/workbook/card/cardNames';
import { logAreas, readLog } from '../../addin/workbook/log/logRound';
import { memoryWorkbook, type MemoryWorkbook } from '../../addin/workbook/memoryWorkbook';
import type { Workbook } from '../../addin/workbook/port';
import { gardenAreas } from '../../addin/workbook/readGarden';
import { gardenSheets } from '../../addin/workbook/sheets/gardenSheets';
import { usedArea } from '../../addin/workbook/snapshot';
import { placesOf } from '../../addin/workbook/tables/buildSheets';
import { inId } from '../../taskpane/named';
import { createPane, type Pane } from '../../taskpane/pane';
import type { HostServices } from '../../taskpane/services';
import type { Block, Field } from '../../taskpane/view';

import { calculatingWorkbook } from './calculatingWorkbook';
import { drive } from './paneDriver';
import { UNTIDY } from './untidyList';

/*
 * Every field that a section shows, also under its folds, is typed over and kept; another pane on the same workbook
 * then shows what was typed, and everything else as it was. Fields are found, not listed: a new one is met here.
 */

interface Opened {
  readonly pane: Pane;
  readonly user: ReturnType<typeof drive>;
}

const open = async (
  workbook: Workbook,
  section: string,
  typed: Readonly<Record<string, string>> = {},
  print?: HostServices['print'],
) => {
  const pane = createPane(workbook, { today: () => '2026-05-03', measures: 'US', ...(print && { print }) });
  await pane.dispatch({ kind: 'workbookChanged' });
  await pane.dispatch({ kind: 'open', section });
  for (const [field, value] of Object.entries(typed)) await pane.dispatch({ kind: 'type', field, value });
  return { pane, user: drive(pane) };
};

const PRODUCTS = ['Seaweed', 'Powder', 'Iron', 'Tonic'];

/** A garden that is ready to feed, made by the pane alone. */
const readyWorkbook = async (memory: MemoryWorkbook, workbook: Workbook = memory): Promise<Opened> => {
  const opened = await open(workbook, 'garden');
  const { user } = opened;
  await user.press('Make the plant inventory');
  await user.open('rig');
  await user.type('The barrel holds', '60');
  await user.type('Time 1', '46');
  await user.press('Keep this rig');
  await user.open('mix');
  for (const [index, name] of PRODUCTS.entries()) {
    if (index > 0) await user.unfold('Products');
    await user.type('Name', name);
    await user.press('Keep this product');
  }
  await user.type('Rate of product 1', '1');
  await user.press('Keep this mix');
  return opened;
};

const listOf = () => memoryWorkbook({ sheets: { List: UNTIDY } });

const fieldsIn = (block: Block): readonly Field[] => {
  if (block.kind === 'fields') return block.fields;
  if (block.kind !== 'table') return [];
  return block.table.rows.flatMap((row) => row.filter((cell) => typeof cell !== 'string'));
};

/** Every field of a section with the button that keeps it: the next below it, or the section's last. */
const keptFields = (pane: Pane): { readonly field: Field; readonly keep: string }[] => {
  const found: { field: Field; keep?: string }[] = [];
  let last = '';
  const look = (blocks: readonly Block[]): void => {
    for (const block of blocks) {
      if (block.kind === 'more') look(block.blocks);
      found.push(...fieldsIn(block).map((field) => ({ field })));
      const button =
        block.kind === 'actions' ? block.actions.find(({ id }) => id.endsWith('.keep'))?.id : undefined;
      if (button === undefined) continue;
      for (const one of found) one.keep ??= button;
      last = button;
    }
  };
  look(pane.view().section.blocks);
  return found.map(({ field, keep = last }) => ({ field, keep }));
};

const unitOf = (label: string): string => `${label}, unit`;

/** What all fields and their units show, by label: an id goes with the name of what it is about. */
const shownIn = (pane: Pane): Map<string, string> =>
  new Map(
    keptFields(pane).flatMap(({ field }) => {
      const unit = 'unit' in field ? field.unit : undefined;
      const own: [string, string] = [field.label, field.value];
      return typeof unit === 'object' ? [own, [unitOf(field.label), unit.value] as const] : [own];
    }),
  );

/** Other values that a field may take, the likeliest first. */
const others = (field: Field): string[] => {
  // From the end: a product that was in the mix before has its old row there still, above the others.
  if (field.kind === 'choice')
    return field.choices
      .map(({ value }) => value)
      .filter((value) => value !== field.value && value !== '')
      .reverse();
  if (field.kind === 'toggle') return [field.value === 'yes' ? '' : 'yes'];
  if (field.kind !== 'number') return ['By the gate'];
  const value = Number(field.value);
  return field.value === '' ? ['3'] : [String(value + 1), String(value - 1)];
};

interface Typing {
  readonly id: string;
  readonly label: string;
  readonly keep: string;
  readonly values: readonly string[];
}

const typingsOf = (pane: Pane): Typing[] =>
  keptFields(pane).flatMap(({ field, keep }) => {
    const own = { id: field.id, label: field.label, keep, values: others(field) };
    if (!('unit' in field) || typeof field.unit !== 'object') return [own];
    const { id, value, choices } = field.unit;
    const values = choices.filter((choice) => choice !== value);
    return [own, { id, label: unitOf(field.label), keep, values }];
  });

/** What makes other fields go, or puts them under another name, comes last. */
const LAST = ['.form', '.name'];

/** Shows what another field is about; nothing of it is kept. */
const KEEPS_NOTHING = ['product.pick'];

/** A new line of the mix is a product and its rate. */
const besides = (id: string): Readonly<Record<string, string>> =>
  /^mix\.product\.\d$/.test(id) ? { [id.replace('product', 'rate')]: '2' } : {};

const rateBeside = (label: string): string => label.replace('Product', 'Rate of product');

const SECTIONS: readonly { section: string; least: number; typed: Readonly<Record<string, string>> }[] = [
  { section: 'garden', least: 9, typed: {} },
  { section: 'rig', least: 24, typed: {} },
  { section: 'mix', least: 20, typed: { 'product.pick': inId(PRODUCTS[0]!) } },
];

describe.each(SECTIONS)('in $section', ({ section, least, typed: asIs }) => {
  test('whatever is typed into a field is kept, and changes no other field', async () => {
    const memory = listOf();
    await readyWorkbook(memory);
    let typed = asIs;
    const first = await open(memory, section, typed);
    // What a liquid does not ask comes before the product is made one.
    const typings = typingsOf(first.pane)
      .filter(({ id }) => !KEEPS_NOTHING.includes(id))
      .sort(
        (a, b) => LAST.findIndex((end) => a.id.endsWith(end)) - LAST.findIndex((end) => b.id.endsWith(end)),
      );
    expect(typings.length).toBeGreaterThanOrEqual(least);
    for (const { label } of typings) {
      const before = await open(memory, section, typed);
      // The same field by its label: what it is about may have another name by now.
      const { id, keep, values } = typingsOf(before.pane).find((one) => one.label === label)!;
      const with_ = besides(id);
      const shown = shownIn(before.pane);
      const said: string[] = [];
      for (const value of values) {
        const { pane } = await open(memory, section, { ...typed, ...with_, [id]: value });
        await pane.dispatch({ kind: 'press', action: keep });
        said.push(`${value}: ${pane.view().message?.text}`);
        if (pane.view().message?.tone !== 'good') continue;
        // A product that has another name is picked by it.
        if (id.endsWith('.name') && id.startsWith('product.')) typed = { 'product.pick': inId(value) };
        const after = shownIn((await open(memory, section, typed)).pane);
        const beside = Object.keys(with_).length > 0 ? { [rateBeside(label)]: '2' } : {};
        for (const [field, was] of shown) {
          if (!after.has(field) && id.endsWith('.form')) continue;
          if (field === 'Product' && id.endsWith('.name')) continue;
          const now = after.get(field);
          expect(now, `${field} after ${label}`).toBe(field === label ? value : (beside[field] ?? was));
        }
        said.length = 0;
        break;
      }
      expect(said, `nothing typed into ${id} could be kept`).toEqual([]);
    }
  });

  test('what was kept can be left blank again, unless the pane says that it is needed', async () => {
    const memory = listOf();
    await readyWorkbook(memory);
    const { pane: first } = await open(memory, section, asIs);
    const numbers = keptFields(first).filter(({ field }) => field.kind === 'number' && field.value !== '');
    for (const { field, keep } of numbers) {
      const { pane } = await open(memory, section, { ...asIs, [field.id]: '' });
      await pane.dispatch({ kind: 'press', action: keep });
      const message = pane.view().message;
      const now = shownIn((await open(memory, section, asIs)).pane).get(field.label);
      if (message?.tone === 'good') expect(['', '1', '100'], field.label).toContain(now);
      else {
        expect(message?.text, field.label).toMatch(/nothing was given|is not known/);
        expect(now, field.label).toBe(field.value);
      }
    }
  });
});

describe('in the adopted list', () => {
  const plantsAfter = async (typed: Readonly<Record<string, string>>) => {
    const memory = listOf();
    const { pane } = await open(memory, 'garden', typed);
    await pane.dispatch({ kind: 'press', action: 'garden.adopt' });
    const { blocks } = await memory.read([{ sheet: 'Plants', row: 0, column: 0, rows: 30, columns: 7 }]);
    return { memory, pane, rows: blocks[0]!.cells.map((row) => row.map(({ value }) => value)) };
  };

  test('every choice shows in the inventory', async () => {
    const { rows: plain } = await plantsAfter({});
    const { pane } = await open(listOf(), 'garden');
    const fields = keptFields(pane).map(({ field }) => field);
    expect(fields.map(({ id }) => id)).toEqual(
      expect.arrayContaining(['adopt.sheet', 'adopt.header', 'adopt.bedFromAbove', 'adopt.column.0']),
    );
    for (const { id, kind } of fields.filter((field) => field.id !== 'adopt.sheet')) {
      const values = kind === 'toggle' ? { [id]: 'yes' } : { [id]: id === 'adopt.header' ? '3' : 'leftOut' };
      const { rows, pane: after } = await plantsAfter(values);
      const said = after.view().message?.text;
      if (id === 'adopt.bedFromAbove') expect(said).toMatch(/^Made the plant inventory/);
      else expect(rows, `${id}: ${said}`).not.toEqual(plain);
    }
  });
});

describe('in the round, the log and the barrels', () => {
  const cardMade = async (typed: Readonly<Record<string, string>>) => {
    const memory = listOf();
    const workbook = calculatingWorkbook(memory);
    await readyWorkbook(memory, workbook);
    const { pane, user } = await open(workbook, 'round', typed);
    await user.press('Make the card');
    expect(user.says()).toMatch(/^Made the card/);
    await pane.dispatch({ kind: 'workbookChanged' });
    return { memory, workbook };
  };

  test('the card is of the day, the hour and the fills that were asked for, midnight too, and is printed', async () => {
    const { workbook } = await cardMade({
      'round.date': '2026-06-01',
      'round.start': '0:00',
      'round.style': 'equal',
    });
    const round = await open(workbook, 'round');
    expect(round.user.field('Start').value).toBe('00:00');
    const printed: string[] = [];
    const printing = await open(workbook, 'round', {}, (sheet) => Promise.resolve(void printed.push(sheet)));
    await printing.user.press('Print the card');
    expect(printed).toEqual(['Round card']);
    expect(printing.user.says()).toBe('Handed the card to the printer.');
    const log = await open(workbook, 'log');
    expect(log.user.field('Day').value).toBe('2026-06-01');
    expect(log.user.answer()).toMatch(/^1 June 2026, 4 fills/);
    const { blocks } = await workbook.read([
      { sheet: 'Round card', row: 0, column: 0, rows: 60, columns: 12 },
    ]);
    const { cells } = blocks[0]!;
    const stands = (value: unknown) => cells.flat().some((cell) => cell.value === value);
    expect(stands(0)).toBe(true);
    expect(stands(46174)).toBe(true);
  });

  test('the log line holds every field of the log as it was typed', async () => {
    const { workbook } = await cardMade({});
    const typed = {
      'log.date': '2026-05-04',
      'log.fills': '7',
      'log.madeUp': '250',
      'log.leftOver': '12.5',
      'log.notes': 'wind',
    };
    const { pane, user } = await open(workbook, 'log', typed);
    expect(keptFields(pane).map(({ field }) => field.id)).toEqual(Object.keys(typed));
    await user.press('Write the log line');
    const { rounds } = readLog(await workbook.read(logAreas(await workbook.outline())));
    expect(rounds).toMatchObject([{ date: 46146, fills: 7, madeUp: 250, leftOver: 12.5, notes: 'wind' }]);
  });

  test('a rate lowered since the card was made: the pane says both, and the log takes the one that was fed', async () => {
    const { memory, workbook } = await cardMade({});
    const untouched = await open(workbook, 'log');
    expect(JSON.stringify(untouched.pane.view().section)).not.toContain('log.fedBy');
    const used = async (typed: Readonly<Record<string, string>>) => {
      const { pane, user } = await open(workbook, 'log', typed);
      const said = JSON.stringify(pane.view().section.blocks);
      await user.press('Write the log line');
      expect(user.says()).toMatch(/^Wrote the round/);
      const area = { sheet: 'Product use', row: 0, column: 0, rows: 12, columns: 5 };
      const { cells } = (await workbook.read([area])).blocks[0]!;
      const last = cells.map((row) => row.map(({ value }) => value)).filter((row) => row[2] === 'Seaweed');
      return { said, amount: Number(last.at(-1)![3]) };
    };
    const made = await used({});
    const outline = await workbook.outline();
    const mix = placesOf(gardenSheets, await workbook.read(gardenAreas(outline)))!.sites['mix']!;
    memory.user.type('Mix', mix.rows[0]!, mix.columns['rate']!, 0.5);
    const now = await used({});
    expect(now.said).toMatch(
      /The sheets have changed since the card was made\. Now it says .*cups? .*of Seaweed; it was made with .*of Seaweed\./,
    );
    expect(now.amount / made.amount).toBeCloseTo(0.5, 1);
    const asMade = await used({ 'log.fedBy': 'made' });
    expect(asMade.said).toContain('As the card planned it when it was made.');
    expect(asMade.amount).toBeCloseTo(made.amount, 6);
  });

  test('a card pasted as values is the user’s own: the pane says so, and the next one stands on a sheet of its own', async () => {
    const { memory, workbook } = await cardMade({});
    const sheet = 'Round card';
    const read = async () => {
      const { blocks } = await workbook.read([usedArea(await workbook.outline(), sheet)!]);
      return blocks[0]!.cells;
    };
    for (const [row, line] of (await read()).entries())
      for (const [column, { formula, value }] of line.entries())
        if (formula !== undefined) memory.user.type(sheet, row, column, value);
    const pasted = await read();
    const { pane, user } = await open(workbook, 'round');
    const said = JSON.stringify(pane.view().section);
    expect(said).toContain('The card: This card was pasted as values');
    expect(said).not.toContain('"Print the card"');
    await user.press('Make the card');
    expect(user.says()).toMatch(/^Made the card/);
    expect((await workbook.outline()).names[CARD]).toMatchObject({ sheet: `${sheet} 2` });
    expect(await read()).toEqual(pasted);
  });

  test('the what-if sheet holds every barrel and limit as it was typed', async () => {
    const { memory, workbook } = await cardMade({});
    const { pane, user } = await open(workbook, 'tanks');
    const fields = keptFields(pane).map(({ field }) => field);
    const numbers = fields.filter(({ kind }) => kind === 'number');
    expect(numbers.length).toBeGreaterThanOrEqual(8);
    for (const [index, { id }] of numbers.entries())
      await pane.dispatch({ kind: 'type', field: id, value: String(201 + index) });
    await user.press('Write the what-if sheet');
    expect(user.says()).toMatch(/^Wrote the barrels side by side/);
    const area = { sheet: 'Tank what-if', row: 0, column: 0, rows: 60, columns: 20 };
    const { blocks } = await memory.read([area]);
    const values = blocks[0]!.cells.flat().map(({ value }) => value);
    for (const [index, { label }] of numbers.entries())
      expect(
        values,
        `${label} in ${values.filter((value) => typeof value === 'number').join(' ')}`,
      ).toContain(201 + index);
  });
});
