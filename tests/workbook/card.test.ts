import { numfmt } from '@univerjs/core';
import { beforeAll, describe, expect, test } from 'vitest';

import { clock, compareTanks, findUnit, grams, litres, planRound, toCanonical } from '../../addin/core';
import type { RoundInput, RoundPlan } from '../../addin/core';
import { cardAreas } from '../../addin/workbook/card/cardNames';
import { makeCard } from '../../addin/workbook/card/makeCard';
import { readCard } from '../../addin/workbook/card/readCard';
import { logAreas, logRound, readLog } from '../../addin/workbook/log/logRound';
import type { Outline, Snapshot, Workbook } from '../../addin/workbook/port';
import { gardenAreas, readGarden } from '../../addin/workbook/readGarden';
import { roundInput } from '../../addin/workbook/roundInput';
import { gardenSheets } from '../../addin/workbook/sheets/gardenSheets';
import { usedArea } from '../../addin/workbook/snapshot';
import { buildSheets, placesOf } from '../../addin/workbook/tables/buildSheets';
import { tankSheet } from '../../addin/workbook/tanks/tankSheet';
import { memoryWorkbook } from '../../addin/workbook/memoryWorkbook';
import { calculatingWorkbook } from '../taskpane/calculatingWorkbook';

let workbook: Workbook;

/** Two stations, three beds, four sizes, a powder by the spoon, a liquid by the fluid ounce. Invented. */
const wishes = {
  measures: 'US' as const,
  tables: {
    plants: {
      add: [
        { plant: 'Ember Lantern', bed: 'Drive', sizeClass: 'Large bush', howMany: 60 },
        { plant: 'Quiet Harbour', bed: 'Drive', sizeClass: 'Bush', howMany: 25 },
        { plant: 'Paper Moth', bed: 'Terrace', sizeClass: 'Potted miniature', howMany: 80 },
        { plant: 'Tall Story', bed: 'Fence', sizeClass: 'Climber', howMany: 12 },
        { plant: 'Ember Lantern', bed: 'Fence', sizeClass: 'Large bush', howMany: 30 },
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
      heads: { unit: 'gal' },
      set: [
        { sizeClass: 'Large bush', dose: 0.7 },
        { sizeClass: 'Bush', dose: 0.5 },
        { sizeClass: 'Potted miniature', dose: 0.25 },
        { sizeClass: 'Climber', dose: 1 },
      ],
    },
    timedBuckets: { cells: [] },
    products: {
      add: [
        {
          name: 'soluble powder 20-20-20',
          form: 'powder',
          N: 20,
          P2O5: 20,
          K2O: 20,
          density: 1.1,
          greatestRate: 1,
          greatestRateUnit: 'tbsp/gal',
          solubility: 400,
          pack: 25,
          packUnit: 'lb',
          price: 60,
        },
        {
          name: 'fish and kelp liquid',
          form: 'liquid',
          density: 1.15,
          N: 2,
          pack: 5,
          packUnit: 'gal',
          price: 90,
        },
      ],
    },
    mix: {
      heads: { name: 'Bloom feed' },
      add: [
        { product: 'soluble powder 20-20-20', rate: 1, rateUnit: 'tbsp/gal' },
        { product: 'fish and kelp liquid', rate: 1, rateUnit: 'fl oz/gal' },
      ],
    },
  },
  forms: {
    rig: {
      barrel: { value: 60, unit: 'gal' },
      flow: { value: 2.6, unit: 'gal/min' },
      heel: { value: 1.5, unit: 'gal' },
    },
  },
};

const areasOfAll = (outline: Outline) => [
  ...gardenAreas(outline),
  ...cardAreas(outline),
  ...logAreas(outline),
];
const snapshot = async (): Promise<Snapshot> => workbook.read(areasOfAll(await workbook.outline()));
const inputOf = (now: Snapshot): RoundInput => {
  const input = roundInput(readGarden(now), { start: 8 * 3600 });
  if (Array.isArray(input)) throw new Error(JSON.stringify(input));
  return input;
};
const planOf = (now: Snapshot): RoundPlan => {
  const plan = planRound(inputOf(now));
  if ('refused' in plan) throw new Error(plan.refused);
  return plan;
};
const gallons = (litres: number): number => litres / toCanonical(1, findUnit('gal')!);
const options = { date: 46_147, start: 8 * 3600, style: 'full' as const };

const shown = async (sheet: string) => {
  const area = usedArea(await workbook.outline(), sheet)!;
  const { blocks } = await workbook.read([area]);
  return blocks[0]!.cells.map((row) => row.map(({ value, error }) => error ?? value));
};

beforeAll(async () => {
  workbook = calculatingWorkbook(memoryWorkbook());
  await workbook.apply({ title: 'Garden', edits: buildSheets(gardenSheets, await snapshot(), wishes) });
});

const at = (cells: readonly (readonly unknown[])[], row: number, column: number) => cells[row]?.[column];
/** The grid tells twelve figures, the record of a card all. */
const rounded = (value: unknown): unknown =>
  JSON.parse(JSON.stringify(value), (_key, told: unknown) =>
    typeof told === 'number' ? Number(told.toPrecision(9)) : told,
  );
const fillsOf = (cells: readonly (readonly unknown[])[]) =>
  cells.filter((row) => /^Fill \d+$/.test(String(row[1])));
const counts = (cells: readonly (readonly unknown[])[], sizeClass: string) => {
  const heads = cells.findIndex((row) => row[1] === 'Hold the wand');
  return at(cells, heads + 1, cells[heads]!.indexOf(sizeClass));
};

describe('the card on the sheet', () => {
  test('its live formulas come to what the planner planned', async () => {
    const before = await snapshot();
    const garden = readGarden(before);
    expect(garden.problems).toEqual([]);
    const plan = planOf(before);
    await workbook.apply(makeCard(before, garden, { input: inputOf(before), plan }, options));
    const card = readCard(await snapshot());
    expect(card).toBeDefined();
    expect(card!.fills).toBe(plan.totals.fills);
    expect(card!.plants).toBe(plan.totals.plants);
    expect(card!.need).toBeCloseTo(gallons(plan.totals.need), 8);
    expect(card!.madeUp).toBeCloseTo(gallons(plan.totals.madeUp), 8);
    expect(card!.finish * 86_400).toBeCloseTo(plan.totals.finish, 3);

    const cells = await shown('Round card');
    expect(cells.flat().filter((value) => String(value).startsWith('#'))).toEqual([]);
    const fills = plan.stations.flatMap((station) => station.fills);
    const shownFills = fillsOf(cells);
    expect(shownFills.length).toBe(fills.length);
    fills.forEach((fill, index) => {
      const row = shownFills[index]!;
      expect(row[2]).toBeCloseTo(gallons(fill.makeUp), 8);
      const start = clock(fill.premixStart / 86_400);
      expect(row.slice(3)).toContain(start);
      fill.products.forEach(({ measure }, at) => {
        expect(String(row[3 + at]).replace(/ \([+\u2212].*\)$/, '')).toBe(measure.words);
      });
    });
    plan.counts.forEach(({ sizeClass, count }) => {
      expect(counts(cells, sizeClass)).toBe(count);
    });
    expect(at(cells, 2, 0)).toBe('');
  });

  test('a dose changed in a cell changes counts, fills and clock, and says when the card is out of date', async () => {
    const before = readCard(await snapshot())!;
    const garden = readGarden(await snapshot());
    const row = garden.doses.find(({ sizeClass }) => sizeClass === 'Large bush')!.row;
    const change = (dose: number) =>
      workbook.apply({
        title: 'Dose',
        edits: [{ kind: 'write', sheet: 'Doses', row, column: 1, cells: [[dose]] }],
      });
    await change(1.4);
    const after = readCard(await snapshot())!;
    const cells = await shown('Round card');
    expect(counts(cells, 'Large bush')).toBe(32);
    expect(at(cells, 2, 0)).toMatch(
      /^The round takes \d+ fills now; this card was made for 3\. Make the card again\.$/,
    );
    // What it was made with is what the log takes of it.
    expect(rounded(after)).toEqual(rounded({ ...before, outOfDate: at(cells, 2, 0) }));
    // The rows that stand on the card are too few now: it shows no measure.
    expect(at(cells, 0, 0)).toBe('Round card: make it again');
    expect(at(cells, 1, 0)).toBe('This card is out of date');
    expect(cells.filter((row) => /cup|tbsp|tsp/.test(String(row[3])))).toEqual([]);
    await change(0.35);
    const fewer = await shown('Round card');
    expect(at(fewer, 1, 0)).toMatch(/^2 fills, /);
    expect(at(fewer, 2, 0)).toBe('');
    await change(0.7);
    expect(readCard(await snapshot())).toEqual(before);
  });

  test('a plant in a bed that the card does not know is pointed out', async () => {
    const { plants } = readGarden(await snapshot());
    const row = plants.at(-1)!.row + 1;
    const write = (cells: (string | number | null)[]) =>
      workbook.apply({
        title: 'Plant',
        edits: [{ kind: 'write', sheet: 'Plants', row, column: 0, cells: [cells] }],
      });
    await write(['Newcomer', 'Gate', 'Bush', 2]);
    expect(at(await shown('Round card'), 2, 0)).toMatch(/other beds or sizes/);
    expect(at(await shown('Round card'), 1, 0)).toBe('This card is out of date');
    await write([null, null, null, null]);
    expect(at(await shown('Round card'), 2, 0)).toBe('');
  });

  test('made again, it leaves nothing of the earlier card and keeps what the user wrote beside it', async () => {
    const first = await shown('Round card');
    await workbook.apply({
      title: 'Note',
      edits: [
        { kind: 'write', sheet: 'Round card', row: first.length + 2, column: 1, cells: [['my own note']] },
      ],
    });
    const now = await snapshot();
    await workbook.apply(makeCard(now, readGarden(now), { input: inputOf(now), plan: planOf(now) }, options));
    const again = await shown('Round card');
    expect(again.slice(0, first.length)).toEqual(first);
    expect(at(again, first.length + 2, 1)).toBe('my own note');
    expect((await workbook.outline()).sheets.filter(({ name }) => name.startsWith('Round card')).length).toBe(
      1,
    );
  });
});

describe('the log', () => {
  test('takes the round over from the card, with what each product used', async () => {
    const now = await snapshot();
    const card = readCard(now)!;
    await workbook.apply(
      logRound(now, 'US', card, { date: options.date, leftOver: 3, notes: '=not a formula' }),
    );
    const { rounds, problems } = readLog(await snapshot());
    expect(problems).toEqual([]);
    expect(rounds).toHaveLength(1);
    expect(rounds[0]).toMatchObject({ round: 1, fills: card.fills, leftOver: 3, notes: '=not a formula' });
    const use = (await shown('Product use')).filter((row) => row[0] === 1);
    expect(use.map((row) => [row[2], row[3], row[4]])).toEqual(
      card.products.map(({ product, amount, unit }) => [product, amount, unit]),
    );
  });

  test('says of a round past midnight that it was done the next day, and makes room for it', async () => {
    const now = await snapshot();
    const late = { ...readCard(now)!, finish: 1.05 };
    const { edits } = logRound(now, 'US', late, { date: options.date, leftOver: 0, notes: '' });
    const format = edits.find((edit) => edit.kind === 'format' && edit.format.includes('next day'));
    expect(numfmt.format((format as { format: string }).format, late.finish)).toBe('01:12 next day');
    expect(numfmt.format((format as { format: string }).format, late.start)).toBe('08:00');
    expect(edits.at(-1)).toMatchObject({ kind: 'width', sheet: 'Feed log', characters: 16 });
  });

  test('counts its rounds on, and products go with what was really made up', async () => {
    const now = await snapshot();
    const card = readCard(now)!;
    const half = { date: options.date + 7, leftOver: 0, madeUp: card.madeUp / 2, notes: '' };
    await workbook.apply(logRound(now, 'US', card, half));
    const { rounds } = readLog(await snapshot());
    expect(rounds.map(({ round }) => round)).toEqual([2, 1]);
    const use = (await shown('Product use')).filter((row) => row[0] === 2);
    expect(use[0]![3]).toBeCloseTo(card.products[0]!.amount / 2, 8);
  });
});

describe('the tank sheet', () => {
  const sizes = [30, 45, 60, 100];

  /** Makes the sheet, and compares each of its rows with the planner's. */
  const compared = async () => {
    const now = await snapshot();
    const input = inputOf(now);
    const stations = planOf(now).stations.map(({ station }) => station);
    const limits = { fills: 4, weight: 500 };
    await workbook.apply(
      tankSheet(now, { stations, barrels: sizes, limits, style: 'full', finding: 'fewer fills' }, 'US'),
    );
    const cells = await shown('Tank what-if');
    expect(cells.flat().filter((value) => String(value).startsWith('#'))).toEqual([]);
    const { rows, smallest } = compareTanks(
      input,
      sizes.map((size) => ({ barrel: litres(size * toCanonical(1, findUnit('gal')!)) })),
      { mostFills: 4, mostWeight: grams(500 * 453.59237) },
    );
    rows.forEach((row, index) => {
      if ('refused' in row) throw new Error(row.refused);
      const [barrel, fills, last, weight, mixing, round, moves, fits] = cells.find(
        (line) => line[0] === sizes[index] && typeof line[1] === 'number' && line[7] !== undefined,
      )!;
      expect(barrel).toBe(sizes[index]);
      expect(fills).toBe(row.fills);
      expect(last).toBeCloseTo(gallons(row.lastFill), 8);
      expect(weight).toBeCloseTo(row.weightFull / 453.59237, 6);
      expect(mixing).toBeCloseTo(row.mixingAndFilling / 60, 6);
      expect(round).toBeCloseTo(row.roundTime / 60, 6);
      expect(moves).toBe(row.moves);
      expect(fits).toBe(row.meetsLimits ? 'yes' : 'no');
    });
    expect(at(cells, 1, 0)).toBe(`The smallest barrel within your limits holds ${sizes[smallest!]} gal.`);
  };

  test('its live formulas come to what the planner says of each barrel', compared);

  test('made where nothing is mixed, it counts no time for mixing, as the planner', async () => {
    const mix = placesOf(gardenSheets, await snapshot())!.sites['mix']!;
    const empty = Object.values(mix.columns).length;
    const rows = mix.rows.map((row) => ({
      kind: 'write' as const,
      sheet: mix.sheet,
      row,
      column: Math.min(...Object.values(mix.columns)),
      cells: [Array.from({ length: empty }, () => null)],
    }));
    await workbook.apply({ title: 'No mix', edits: rows });
    expect(inputOf(await snapshot()).mix).toEqual([]);
    await compared();
  });
});
