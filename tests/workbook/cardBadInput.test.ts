import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import type { CellValue } from '../../addin/workbook/change';
import { PRODUCT_HEADS } from '../../addin/workbook/card/cardContext';
import { CARD, CARD_CELLS, CARD_WORKINGS, LATER_CELLS } from '../../addin/workbook/card/cardNames';
import type { Snapshot } from '../../addin/workbook/port';
import { gardenSheets } from '../../addin/workbook/sheets/gardenSheets';
import { areaNamed, cellAt, cellsOf } from '../../addin/workbook/snapshot';
import { placesOf } from '../../addin/workbook/tables/buildSheets';
import { openHeadlessGrid } from './headlessGrid';
import type { MadeGarden } from '../properties/liveCard/gardens';
import { gridBook, type LiveBook } from '../properties/liveCard/gridBook';
import { cardOf, looked, snapshotOf } from '../properties/liveCard/walkThrough';

/** Two stations; a powder above its label with a reason, a liquid below its own, one without a label. Invented. */
const garden: MadeGarden = {
  round: { start: 23 * 3600, style: 'equal', reason: 'The adviser said so' },
  wishes: {
    measures: 'metric',
    tables: {
      plants: {
        add: [
          { plant: 'Ember Lantern', bed: 'Drive', sizeClass: 'Bush', howMany: 30 },
          { plant: 'Quiet Harbour', bed: 'Drive', sizeClass: 'Bush', howMany: 3 },
          { plant: 'Paper Moth', bed: 'Terrace', sizeClass: 'Miniature', howMany: 40 },
          { plant: 'Tall Story', bed: 'Fence', sizeClass: 'Climber', howMany: 12 },
        ],
      },
      beds: {
        add: [
          { walk: 1, bed: 'Drive', station: 'Front' },
          { walk: 2, bed: 'Terrace', station: 'Front' },
          { walk: 3, bed: 'Fence', station: 'Back' },
        ],
      },
      doses: {
        heads: { unit: 'L' },
        set: [
          { sizeClass: 'Bush', dose: 2.5 },
          { sizeClass: 'Miniature', dose: 1 },
          { sizeClass: 'Climber', dose: 4 },
        ],
      },
      products: {
        add: [
          {
            name: 'Bloom powder',
            form: 'powder',
            density: 0.9,
            greatestRate: 1,
            greatestRateUnit: 'g/L',
            solubility: 400,
          },
          {
            name: 'Fish',
            form: 'liquid',
            density: 1.1,
            greatestRate: 4,
            greatestRateUnit: 'mL/L',
            pack: 5,
            packUnit: 'L',
            price: 40,
          },
          { name: 'Tonic', form: 'liquid' },
          { name: 'Spare', form: 'liquid' },
        ],
      },
      mix: {
        heads: { name: 'Bloom feed' },
        add: [
          { product: 'Bloom powder', rate: 1.2, rateUnit: 'g/L' },
          { product: 'Fish', rate: 2, rateUnit: 'mL/L' },
          { product: 'Tonic', rate: 0.5, rateUnit: 'mL/L' },
        ],
      },
    },
    forms: { rig: { barrel: { value: 200, unit: 'L' }, flow: { value: 10, unit: 'L/min' } } },
  },
};

let book: LiveBook;
let first: Snapshot;
beforeAll(async () => {
  book = await gridBook((await cardOf(garden))!);
  first = await snapshotOf(book);
});
afterAll(() => book?.close());

type Cell = { sheet: string; row: number; column: number };
type Typed = readonly (readonly [Cell, CellValue])[];

/** A cell of a table, its rows counted from 0. */
const of = (table: string, row: number, key: string): Cell => {
  const site = placesOf(gardenSheets, first)!.sites[table]!;
  return { sheet: site.sheet, row: (site.rows[0] ?? site.end) + row, column: site.columns[key]! };
};
const named = (name: string): Cell => areaNamed(first, name)!;
const cells = (table: string, row: number, values: Readonly<Record<string, CellValue>>): Typed =>
  Object.entries(values).map(([key, value]) => [of(table, row, key), value] as const);

/** What the card shows once the cells are typed; afterwards they are what they were. */
const typed = async (edits: Typed) => {
  const made = looked(first, undefined).now;
  const type = (list: Typed) =>
    book.type(list.map(([{ sheet, row, column }, input]) => ({ sheet, row, column, input })));
  await type(edits);
  const after = looked(await snapshotOf(book), made);
  await type(edits.map(([cell]) => [cell, cellAt(first, cell.sheet, cell.row, cell.column).value]));
  return after;
};

const OTHER_NAME = { name: 'Fish 2' };
const NONE = { product: null, rate: null, rateUnit: null };

describe('typed under a card, which then shows no measure and says why', () => {
  test.each<[what: string, says: RegExp, edits: () => Typed]>([
    [
      'a label’s rate taken away',
      /“Fish” has lost its label's rate/,
      () => cells('products', 1, { greatestRate: null }),
    ],
    ['a label’s rate typed as text', /“Fish”/, () => cells('products', 1, { greatestRate: '4' })],
    [
      'a label’s rate that no label allows',
      /“Fish” has a cell/,
      () => cells('products', 1, { greatestRate: 1e9 }),
    ],
    [
      'a label’s rate lowered below the rate',
      /“Fish” is above the label/,
      () => cells('products', 1, { greatestRate: 1 }),
    ],
    [
      'a unit of the label’s rate that is none',
      /“Fish”/,
      () => cells('products', 1, { greatestRateUnit: 'a lot' }),
    ],
    [
      'a label for a product that had none, below its rate',
      /“Tonic” is above the label/,
      () => cells('products', 2, { greatestRate: 0.2, greatestRateUnit: 'mL/L' }),
    ],
    ['a rate above the label', /“Fish” is above the label/, () => cells('mix', 1, { rate: 5 })],
    [
      'a rate above the one that the reason was given for',
      /“Bloom powder” is above/,
      () => cells('mix', 0, { rate: 1.3 }),
    ],
    ['a rate typed as text', /mix has changed/, () => cells('mix', 1, { rate: '2' })],
    ['a rate emptied', /mix has changed/, () => cells('mix', 1, { rate: null })],
    ['a rate below 0', /mix has changed/, () => cells('mix', 1, { rate: -2 })],
    ['a unit of rate of another kind', /“Fish” is not as it was/, () => cells('mix', 1, { rateUnit: 'g/L' })],
    ['the mix emptied', /mix has changed/, () => [0, 1, 2].flatMap((row) => cells('mix', row, NONE))],
    ['a product renamed', /“Fish” is not as it was/, () => cells('products', 1, OTHER_NAME)],
    ['a product renamed in the mix', /“Fish” is not as it was/, () => cells('mix', 1, { product: 'Fish 2' })],
    [
      'a product taken off the sheet',
      /“Fish” is not as it was/,
      () =>
        cells('products', 1, {
          name: null,
          form: null,
          density: null,
          greatestRate: null,
          greatestRateUnit: null,
        }),
    ],
    [
      'a product in two rows',
      /“Fish” is not as it was/,
      () => cells('products', 4, { name: ' fish', form: 'liquid' }),
    ],
    ['a product spread dry', /“Fish” is not as it was/, () => cells('products', 1, { form: 'dry' })],
    ['a solubility below 0', /“Bloom powder” has a cell/, () => cells('products', 0, { solubility: -1 })],
    ['a price in words', /“Fish” has a cell/, () => cells('products', 1, { price: 'n/a' })],
    ['the reason deleted', /“Bloom powder” is above/, () => [[named(LATER_CELLS.reason), null]]],
    ['a reason of spaces', /“Bloom powder” is above/, () => [[named(LATER_CELLS.reason), '  ']]],
    ['a start that is no time', /The start beside the card/, () => [[named(CARD_CELLS.start), '7:00']]],
    ['no start', /The start beside the card/, () => [[named(CARD_CELLS.start), null]]],
    ['no way of filling', /The start beside the card/, () => [[named(CARD_CELLS.style), null]]],
    ['a way of filling that is none', /./, () => [[named(CARD_CELLS.style), 'ful']]],
    ['a bed moved to another station', /walk has changed/, () => cells('beds', 1, { station: 'Back' })],
    ['a station emptied', /A station has no plants/, () => cells('plants', 3, { howMany: 0 })],
    ['a plant in a bed with a wildcard', /other beds/, () => cells('plants', 0, { bed: 'Dr*' })],
    ['a plant in a bed with outer spaces', /other beds/, () => cells('plants', 0, { bed: ' Drive ' })],
    ['a part of a plant', /A row of Plants/, () => cells('plants', 0, { howMany: 2.5 })],
    ['a size in two rows', /A size has no dose/, () => cells('doses', 3, { sizeClass: 'bush', dose: 2 })],
    ['a barrel in pounds', /^Barrel/, () => [[named('Rig_barrel_unit'), 'lb']]],
    ['a flow in words', /^Flow at the wand/, () => [[named('Rig_flow'), 'fast']]],
  ])('%s', async (_what, says, edits) => {
    const { card, follows, found } = await typed(edits());
    expect(found).toEqual([]);
    expect(follows).toBe(false);
    expect(card.warning).toMatch(says);
  });
});

describe('typed under a card, which follows', () => {
  test.each<[what: string, edits: () => Typed]>([
    ['a lower rate', () => cells('mix', 1, { rate: 1 })],
    ['a rate as high as the label allows', () => cells('mix', 1, { rate: 4 })],
    ['a lower rate than the reason was given for', () => cells('mix', 0, { rate: 1.1 })],
    [
      'a label for a product that had none',
      () => cells('products', 2, { greatestRate: 1, greatestRateUnit: 'mL/L' }),
    ],
    ['a product in other letters', () => cells('mix', 1, { product: ' FISH' })],
    ['an amount too little to measure', () => cells('mix', 1, { rate: 0.001 })],
    [
      'parts of a stock that add up to no whole measure',
      () => [...cells('products', 1, { greatestRate: 0.0095 }), ...cells('mix', 1, { rate: 0.0095 })],
    ],
    [
      'products in another order',
      () => [
        ...cells('mix', 0, { product: 'Tonic', rate: 0.5, rateUnit: 'mL/L' }),
        ...cells('mix', 2, { product: 'Bloom powder', rate: 1.2, rateUnit: 'g/L' }),
      ],
    ],
    ['another reason', () => [[named(LATER_CELLS.reason), 'The club tried it']]],
    ['fewer plants', () => cells('plants', 2, { howMany: 4 })],
    ['an earlier start', () => [[named(CARD_CELLS.start), 0.25]]],
    ['full barrels', () => [[named(CARD_CELLS.style), 'full']]],
    ['a coarser count', () => [[named('Rig_count_step'), 5]]],
  ])('%s', async (_what, edits) => {
    const { follows, found } = await typed(edits());
    expect(found).toEqual([]);
    expect(follows).toBe(true);
  });
});

describe('rows taken out and put in under a card', () => {
  test.each<[what: string, how: 'delete' | 'insert', table: string, row: number, follows: boolean]>([
    ['a product deleted', 'delete', 'products', 1, false],
    ['a product that is not in the mix deleted', 'delete', 'products', 3, true],
    ['a row of the mix deleted', 'delete', 'mix', 0, false],
    ['plants deleted', 'delete', 'plants', 0, true],
    ['a bed deleted', 'delete', 'beds', 1, false],
    ['a row put in above the products', 'insert', 'products', 0, true],
    ['a row put in between the doses', 'insert', 'doses', 1, true],
  ])('%s', async (_what, how, table, row, follows) => {
    const own = await gridBook((await cardOf(garden))!);
    try {
      const made = looked(await snapshotOf(own), undefined);
      const { sheet, row: at } = of(
        table,
        row,
        Object.keys(placesOf(gardenSheets, first)!.sites[table]!.columns)[0]!,
      );
      await own.rows(how, sheet, at);
      const after = looked(await snapshotOf(own), made.now);
      expect(after.found).toEqual([]);
      expect(after.follows).toBe(follows);
    } finally {
      await own.close();
    }
  });
});

test.each(['10-12', '3/4', '5 May', 'true'])(
  'made for a bed called %s, a card shows its measures',
  async (bed) => {
    const named = structuredClone(garden);
    const { plants, beds } = named.wishes.tables as Record<string, { add: { bed: string }[] }>;
    for (const row of [...plants!.add, ...beds!.add]) if (row.bed === 'Drive') row.bed = bed;
    const own = await gridBook((await cardOf(named))!);
    try {
      const { follows, found } = looked(await snapshotOf(own), undefined);
      expect(found).toEqual([]);
      expect(follows).toBe(true);
    } finally {
      await own.close();
    }
  },
);

describe('a row of the card itself taken out', () => {
  // Title, warning, reason, counts, heads and rows of fills and beds: the sentence must not hang on any of them.
  test.each([0, 2, 3, 6, 9, 10, 11, 13, 16])(
    'row %d: a product above its label shows no measure',
    async (at) => {
      const own = await gridBook((await cardOf(garden))!);
      try {
        const { sheet } = named(CARD);
        await own.rows('delete', sheet, at);
        const fish = of('mix', 1, 'rate');
        await own.type([{ ...fish, input: 8 }]);
        const snapshot = await snapshotOf(own);
        const printed = areaNamed(snapshot, CARD)!;
        const rows = cellsOf(snapshot, { ...printed, rows: printed.rows + 2 });
        const column = Math.max(...rows.map((line) => line.findIndex(({ value }) => value === 'Fish')));
        // Its heading goes with its row of the workings; then nothing may say what it takes.
        const shown = column < 0 ? rows.flat() : rows.map((line) => line[column] ?? { value: null });
        expect(rows.flat().filter(({ value }) => String(value).startsWith('1 L 30 mL'))).toEqual([]);
        if (column >= 0)
          expect(shown.filter(({ value }) => /\d (?:mL|L)\b(?!\/)/.test(String(value)))).toEqual([]);
        const says = shown.some(({ value, error }) => error !== undefined || /again/.test(String(value)));
        expect(says).toBe(true);
        expect(rows.flat().filter(({ value }) => /made up,/.test(String(value)))).toEqual([]);
      } finally {
        await own.close();
      }
    },
  );
});

describe('a cell of the workings emptied', () => {
  const { share, over, fault } = PRODUCT_HEADS;
  test.each([share, over, fault])('%s: a product above its label shows no measure', async (head) => {
    const area = areaNamed(first, CARD_WORKINGS)!;
    const rows = cellsOf(first, area);
    const column = rows[0]!.findIndex(({ value }) => value === head);
    const row = rows.findIndex((line) => line.some(({ value }) => value === 'Fish'));
    const cell = { sheet: area.sheet, row: area.row + row, column: area.column + column };
    const { formula } = cellAt(first, cell.sheet, cell.row, cell.column);
    await book.type([{ ...cell, input: null }]);
    const { follows, found } = await typed(cells('mix', 1, { rate: 8 }));
    await book.type([{ ...cell, input: { formula: formula! } }]);
    expect(found).toEqual([]);
    expect(follows).toBe(false);
  });
});

test('copied without the sheets that it reads, a card shows no measure', async () => {
  const whole = (await cardOf(garden))!.inspect();
  const alone = { ...whole, sheets: whole.sheets.filter(({ name }) => name === named(CARD).sheet) };
  const grid = await openHeadlessGrid(alone);
  try {
    const shown = grid.values(areaNamed(first, CARD)!).flat();
    expect(shown).toContain('Hold the wand');
    expect(shown.filter((value) => /\d (?:mL|L|g|kg)\b(?!\/)/.test(String(value)))).toEqual([]);
    expect(shown[0]).toBe('Round card: make it again');
  } finally {
    grid.close();
  }
});
