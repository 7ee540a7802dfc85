import { beforeAll, describe, expect, test } from 'vitest';

import { planRound, toCanonical, findUnit, seconds } from '../../addin/core';
import type { RoundPlan } from '../../addin/core';
import { cardAreas } from '../../addin/workbook/card/cardNames';
import { makeCard } from '../../addin/workbook/card/makeCard';
import { readCard } from '../../addin/workbook/card/readCard';
import { logAreas, logRound, logSheets, readLog } from '../../addin/workbook/log/logRound';
import type { Outline, Snapshot, Workbook } from '../../addin/workbook/port';
import { gardenAreas, readGarden } from '../../addin/workbook/readGarden';
import { roundInput } from '../../addin/workbook/roundInput';
import { gardenSheets } from '../../addin/workbook/sheets/gardenSheets';
import { usedArea } from '../../addin/workbook/snapshot';
import { buildSheets } from '../../addin/workbook/tables/buildSheets';
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
const planOf = (now: Snapshot): RoundPlan => {
  const input = roundInput(readGarden(now), { start: seconds(8 * 3600) });
  if (Array.isArray(input)) throw new Error(JSON.stringify(input));
  const plan = planRound(input as Exclude<typeof input, readonly unknown[]>);
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

describe('the card in the grid', () => {
  test('computes what the planner planned', async () => {
    const before = await snapshot();
    const garden = readGarden(before);
    expect(garden.problems).toEqual([]);
    const plan = planOf(before);
    await workbook.apply(makeCard(before, garden, plan, options));
    const cells = await shown('Round card');
    console.log(cells.map((row) => row.map((value) => String(value ?? '')).join(' | ')).join('\n'));
    const card = readCard(await snapshot());
    expect(card).toBeDefined();
    expect(card!.fills).toBe(plan.totals.fills);
    expect(card!.plants).toBe(plan.totals.plants);
    expect(card!.need).toBeCloseTo(gallons(plan.totals.need), 8);
    expect(card!.madeUp).toBeCloseTo(gallons(plan.totals.madeUp), 8);
    expect(card!.finish * 86_400).toBeCloseTo(plan.totals.finish, 3);
    expect(cells.flat().filter((value) => typeof value === 'string' && value.startsWith('#'))).toEqual([]);
  });

  test('writes the log and the product use', async () => {
    const now = await snapshot();
    await workbook.apply(
      logRound(now, 'US', readCard(now)!, { date: options.date, leftOver: 3, notes: '=not a formula' }),
    );
    const { rounds, problems } = readLog(await snapshot());
    expect(problems).toEqual([]);
    expect(rounds[0]).toMatchObject({ round: 1, leftOver: 3, notes: '=not a formula' });
    expect(logSheets.sheets.length).toBe(2);
  });

  test('lays barrels side by side', async () => {
    const now = await snapshot();
    const stations = planOf(now).stations.map(({ station }) => station);
    await workbook.apply(
      tankSheet(now, {
        stations,
        barrels: [30, 45, 60, 100],
        limits: { fills: 4 },
        style: 'full',
        finding: 'fewer fills',
      }),
    );
    const cells = await shown('Tank what-if');
    console.log(cells.map((row) => row.map((value) => String(value ?? '')).join(' | ')).join('\n'));
    expect(cells.flat().filter((value) => typeof value === 'string' && value.startsWith('#'))).toEqual([]);
  });
});
