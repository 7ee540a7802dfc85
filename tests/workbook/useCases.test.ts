import { describe, expect, test } from 'vitest';
import { planRound, proposeAdoption, readList } from '../../addin/core';
import type { Change } from '../../addin/workbook/change';
import { memoryWorkbook, type MemoryWorkbook } from '../../addin/workbook/memoryWorkbook';
import { WorkbookError } from '../../addin/workbook/port';
import { roundInput } from '../../addin/workbook/roundInput';
import { SHAPE } from '../../addin/workbook/shapes';
import { adoptList } from '../../addin/workbook/useCases/adoptList';
import { keepBeds, keepDoses, keepSettings } from '../../addin/workbook/useCases/keepDoses';
import { keepMix, keepProducts, type KeptProduct } from '../../addin/workbook/useCases/keepMix';
import { keepRig, keepTimedBuckets } from '../../addin/workbook/useCases/keepRig';
import { newGarden } from '../../addin/workbook/useCases/newGarden';
import { act, gardenOf, newGardenWorkbook } from './gardens';

const POWDER: KeptProduct = {
  name: 'Powder 20-20-20',
  form: 'powder',
  density: 0.95,
  N: 20,
  P2O5: 20,
  K2O: 20,
  greatestRate: { value: 1, unit: 'tbsp/gal' },
  solubility: 400,
  pack: { value: 5, unit: 'lb' },
  price: 22,
};
const SEAWEED: KeptProduct = { name: 'Seaweed', form: 'liquid' };
const RATE = { value: 1, unit: 'tbsp/gal' };

const LIST = [
  ['Our roses'],
  [],
  ['Rose', 'Bed', 'Type', 'Pot?', 'Qty', 'Year'],
  ['Amber Lane', 'East', 'HT', '', 3, 2014],
  ['Amber Lane', 'East', 'HT', '', 1, 2014],
  ['Tiny Bell', 'Patio', 'mini', 'pot', 2, 2020],
  ['=Sum of Light', 'East', 'FL', '', 2, 2019],
];

const adoptedFrom = async (workbook: MemoryWorkbook, name: string) => {
  const { cells } = workbook.inspect().sheets.find((sheet) => sheet.name === name)!;
  const rows = Array.from({ length: 7 }, (_, row) =>
    Array.from({ length: 6 }, (_cell, column) => cells.get(row)?.get(column)?.value ?? null),
  );
  const sheet = { cells: rows, merges: [] };
  return readList(sheet, proposeAdoption(sheet));
};

/** A change crosses pipes as JSON, and what some hosts keep out of their undo comes last. */
const wellFormed = (change: Change): void => {
  expect(JSON.parse(JSON.stringify(change))).toEqual(change);
  expect(JSON.stringify(change)).not.toContain('undefined');
  const late = change.edits.findIndex(({ kind }) => kind === 'note' || kind === 'freeze');
  const after = late < 0 ? [] : change.edits.slice(late).map(({ kind }) => kind);
  expect(after.filter((kind) => !['note', 'freeze', 'activate'].includes(kind))).toEqual([]);
};

describe('a new garden', () => {
  test.each([
    ['US', 'gal', 0.75, '$', { value: 25, unit: 'lb' }],
    ['metric', 'L', 3, '€', { value: 11, unit: 'kg' }],
    ['imperial', 'imp gal', 0.65, '£', { value: 25, unit: 'lb' }],
  ] as const)('starts in %s measures', async (measures, unit, dose, currency, emptyWeight) => {
    const workbook = memoryWorkbook();
    wellFormed(await act(workbook, (snapshot) => newGarden(snapshot, measures)));
    const garden = await gardenOf(workbook);
    expect(garden.problems).toEqual([]);
    expect(garden.settings).toMatchObject({ measures, currency, fillStyle: 'full' });
    expect(garden.doseUnit).toBe(unit);
    expect(garden.doses[0]).toMatchObject({ sizeClass: 'Large bush', dose });
    expect(garden.rig).toMatchObject({ barrel: { unit }, flow: {}, emptyWeight });
    expect(Object.values(garden.has).every(Boolean)).toBe(true);
  });

  test('is one change that leaves what is there alone', async () => {
    const workbook = memoryWorkbook({ sheets: { 'My list': LIST } });
    const before = workbook.inspect().sheets[0];
    await act(workbook, (snapshot) => newGarden(snapshot, 'US'));
    expect(workbook.inspect().sheets[0]).toBe(before);
    expect(workbook.inspect().active.sheet).toBe('Plants');
    workbook.undo();
    expect((await workbook.outline()).sheets.map(({ name }) => name)).toEqual(['My list']);
  });

  test('tells inputs from computed cells, and offers what may be chosen', async () => {
    const workbook = await newGardenWorkbook();
    expect(workbook.look('Plants', 4, 3).style).toBe('input');
    expect(workbook.look('Plants', 4, 6).style).toBe('computed');
    // Words to the left, numbers to the right, each under its heading.
    expect([0, 3].map((at) => workbook.look('Plants', 3, at).style)).toEqual(['header', 'numberHeader']);
    expect([workbook.look('Rig', 4, 1).style, workbook.look('Rig', 7, 1).style]).toEqual([
      'input',
      'computed',
    ]);
    expect(workbook.cell('Rig', 1, 0).value).toMatch(/^The barrel, pump, hose and wand\./);
    expect(workbook.look('Plants', 4, 2).list?.source).toMatchObject({ sheet: 'Doses', row: 5, column: 0 });
    expect(workbook.look('Rig', 4, 2).list?.source).toContain('imp gal');
    expect(workbook.look('Plants', 3, 3).note).toContain('0 leaves the line out');
    expect(workbook.inspect().sheets.find(({ name }) => name === 'Plants')?.frozen).toEqual({
      rows: 4,
      columns: 1,
    });
  });
});

describe('adopting a list', () => {
  test('builds the inventory, the walk and the doses, and leaves the list as it is', async () => {
    const workbook = memoryWorkbook({ sheets: { 'My list': LIST } });
    const before = workbook.inspect().sheets[0];
    const inventory = await adoptedFrom(workbook, 'My list');
    wellFormed(await act(workbook, (snapshot) => adoptList(snapshot, inventory, 'US').change));
    expect(workbook.inspect().sheets[0]).toBe(before);
    const garden = await gardenOf(workbook);
    expect(garden.problems).toEqual([]);
    expect(
      garden.plants.map(({ plant, bed, sizeClass, howMany, place }) => [
        plant,
        bed,
        sizeClass,
        howMany,
        place,
      ]),
    ).toEqual([
      ['Amber Lane', 'East', 'Large bush', 4, 'ground'],
      ['Tiny Bell', 'Patio', 'Potted miniature', 2, 'pot'],
      ['=Sum of Light', 'East', 'Bush', 2, 'ground'],
    ]);
    expect(garden.beds.map(({ bed, walk, station }) => [bed, walk, station])).toEqual([
      ['East', 1, 'A'],
      ['Patio', 2, 'A'],
    ]);
    expect(workbook.cell('Plants', 6, 0)).toEqual({ value: '=Sum of Light' });
  });

  test('lists sizes that are not known on Doses, without a dose', async () => {
    const workbook = await newGardenWorkbook();
    const inventory = {
      plants: [
        {
          plant: 'X',
          bed: 'E',
          roseClass: '',
          sizeClass: 'Not known',
          pot: false,
          count: 1,
          notes: '',
          sourceRows: [],
        },
      ],
    };
    await act(workbook, (snapshot) => adoptList(snapshot, inventory as never, 'US').change);
    const { doses } = await gardenOf(workbook);
    expect(doses.at(-1)).toEqual({ row: 13, sizeClass: 'Not known', dose: undefined });
  });
});

describe('keeping the rig', () => {
  const times = { bucket: { value: 2, unit: 'gal' }, seconds: [46, 47.5, 45] };

  test('writes the timed buckets and lets the flow follow', async () => {
    const workbook = await newGardenWorkbook();
    workbook.user.type('Rig', 7, 1, 3);
    wellFormed(await act(workbook, (snapshot) => keepTimedBuckets(snapshot, times, 'US')));
    expect(workbook.cell('Rig', 7, 1).formula).toContain('FEED.FLOW');
    const { rig, timedBuckets } = await gardenOf(workbook);
    expect({ bucket: rig.bucket, seconds: timedBuckets }).toEqual(times);
  });

  test('fewer times take the others out and leave remarks', async () => {
    const workbook = await newGardenWorkbook();
    await act(workbook, (snapshot) => keepTimedBuckets(snapshot, times, 'US'));
    workbook.user.type('Rig', 6, 6, 'half full');
    await act(workbook, (snapshot) => keepTimedBuckets(snapshot, { ...times, seconds: [50] }, 'US'));
    expect((await gardenOf(workbook)).timedBuckets).toEqual([50]);
    expect(workbook.cell('Rig', 6, 6).value).toBe('half full');
  });

  test('a value that is left out is emptied; a flow that is given stands over the formula', async () => {
    const workbook = await newGardenWorkbook();
    const { rig } = await gardenOf(workbook);
    const kept = { ...rig, heel: { unit: 'L' }, flow: { value: 2.6, unit: 'gal/min' }, moveTime: undefined };
    await act(workbook, (snapshot) => keepRig(snapshot, { rig: kept, timedBuckets: times.seconds }, 'US'));
    const after = await gardenOf(workbook);
    expect(after.rig).toMatchObject({ heel: { unit: 'L' }, flow: { value: 2.6, unit: 'gal/min' } });
    expect(after.rig.heel.value).toBeUndefined();
    expect(after.rig.moveTime).toBeUndefined();
    expect(workbook.cell('Rig', 7, 1)).toEqual({ value: 2.6 });
  });

  test.each([
    [{ barrel: { value: -60, unit: 'gal' } }, 'Rig, Barrel: “-60” was given; use a number above 0.'],
    [{ barrel: { value: 60, unit: 'firkin' } }, 'Rig, Barrel, unit: “firkin” was given; use one of mL, L,'],
    [{ fillLine: 95 }, 'Rig, Fill line: “95” was given; use a number from 0.01 to 1.'],
    [{ betweenPlants: Number.NaN }, 'Rig, Between plants: “NaN” was given; use a number from 0 to 3,600.'],
  ])('%j is refused in a sentence', async (wrong, sentence) => {
    const workbook = await newGardenWorkbook();
    const { rig } = await gardenOf(workbook);
    const before = workbook.inspect();
    const kept = act(workbook, (snapshot) =>
      keepRig(snapshot, { rig: { ...rig, ...wrong }, timedBuckets: times.seconds }, 'US'),
    );
    await expect(kept).rejects.toThrow(WorkbookError);
    await expect(kept).rejects.toThrow(sentence);
    expect(workbook.inspect()).toBe(before);
  });
});

describe('keeping products and the mix', () => {
  test('what is kept is what is read again', async () => {
    const workbook = await newGardenWorkbook();
    const mix = [
      { product: 'Powder 20-20-20', rate: RATE },
      { product: 'Seaweed', rate: { value: 2, unit: 'mL/L' } },
    ];
    wellFormed(
      await act(workbook, (s) => keepMix(s, { name: 'Bloom', mix, products: [POWDER, SEAWEED] }, 'US')),
    );
    const garden = await gardenOf(workbook);
    expect(garden.products).toMatchObject([POWDER, SEAWEED]);
    expect(garden.mix).toMatchObject(mix);
    expect(garden.mixName).toBe('Bloom');
    expect(garden.problems).toEqual([]);
  });

  test('a product taken out of the mix keeps its row without a rate', async () => {
    const workbook = await newGardenWorkbook();
    const mix = [
      { product: 'Powder 20-20-20', rate: RATE },
      { product: 'Seaweed', rate: RATE },
    ];
    await act(workbook, (s) => keepMix(s, { mix, products: [POWDER, SEAWEED] }, 'US'));
    await act(workbook, (s) => keepMix(s, { mix: mix.slice(1) }, 'US'));
    const garden = await gardenOf(workbook);
    expect(garden.mix.map(({ product }) => product)).toEqual(['Seaweed']);
    expect([workbook.cell('Mix', 5, 0).value, workbook.cell('Mix', 5, 1).value]).toEqual([
      'Powder 20-20-20',
      null,
    ]);
  });

  test('a product with its row may have another name, and what it no longer has is emptied', async () => {
    const workbook = await newGardenWorkbook();
    await act(workbook, (s) => keepProducts(s, [POWDER], 'US'));
    const { row } = (await gardenOf(workbook)).products[0]!;
    await act(workbook, (s) => keepProducts(s, [{ row, name: 'Powder, new', form: 'powder' }], 'US'));
    expect((await gardenOf(workbook)).products).toMatchObject([{ row, name: 'Powder, new' }]);
    expect((await gardenOf(workbook)).products[0]!.greatestRate).toBeUndefined();
  });

  test('a rate that is no rate is refused', async () => {
    const workbook = await newGardenWorkbook();
    const mix = [{ product: 'Seaweed', rate: { value: 1, unit: 'a splash' } }];
    await expect(act(workbook, (s) => keepMix(s, { mix, products: [SEAWEED] }, 'US'))).rejects.toThrow(
      'Mix, Rate, unit: “a splash” was given; use a rate as labels print it, such as tbsp/gal, mL/L or oz/100 gal.',
    );
  });
});

describe('keeping doses, walk and settings', () => {
  test('doses are written where they stand, new sizes below', async () => {
    const workbook = await newGardenWorkbook();
    const doses = [
      { sizeClass: 'bush', dose: 0.7 },
      { sizeClass: 'Giant', dose: 2 },
      { sizeClass: 'Climber' },
    ];
    await act(workbook, (s) => keepDoses(s, { unit: 'qt', doses }, 'US'));
    const garden = await gardenOf(workbook);
    expect(garden.doseUnit).toBe('qt');
    expect(garden.doses.map(({ sizeClass, dose }) => [sizeClass, dose])).toEqual([
      ['Large bush', 0.75],
      ['Bush', 0.7],
      ['Small bush', 0.4],
      ['Miniature', 0.3],
      ['Potted bush', 0.5],
      ['Potted miniature', 0.25],
      ['Climber', undefined],
      ['Tree rose', 0.75],
      ['Giant', 2],
    ]);
  });

  test('the walk is written bed by bed', async () => {
    const workbook = memoryWorkbook({ sheets: { 'My list': LIST } });
    const inventory = await adoptedFrom(workbook, 'My list');
    await act(workbook, (s) => adoptList(s, inventory, 'US').change);
    await act(workbook, (s) => keepBeds(s, [{ bed: 'PATIO', walk: 0.5, station: 'B' }], 'US'));
    expect((await gardenOf(workbook)).beds.map(({ bed, walk, station }) => [bed, walk, station])).toEqual([
      ['East', 1, 'A'],
      ['Patio', 0.5, 'B'],
    ]);
  });

  test('settings that are given are written, the others stay', async () => {
    const workbook = await newGardenWorkbook();
    await act(workbook, (s) => keepSettings(s, { gardenName: 'Hill garden', fillStyle: 'equal' }, 'US'));
    expect((await gardenOf(workbook)).settings).toEqual({
      gardenName: 'Hill garden',
      grower: '',
      measures: 'US',
      currency: '$',
      fillStyle: 'equal',
      shape: SHAPE,
    });
  });

  test('a second sheet row of the same size is told', async () => {
    const workbook = await newGardenWorkbook();
    workbook.user.type('Doses', 13, 0, 'BUSH');
    expect((await gardenOf(workbook)).problems.map(({ sentence }) => sentence)).toEqual([
      'Doses, row 14, Size class: “BUSH” stands in row 7 already; keep one of the two.',
    ]);
  });
});

test('from an untidy list to a planned round', async () => {
  const workbook = memoryWorkbook({ sheets: { 'My list': LIST } });
  const inventory = await adoptedFrom(workbook, 'My list');
  await act(workbook, (s) => adoptList(s, inventory, 'US').change);
  const { rig } = await gardenOf(workbook);
  const kept = {
    rig: { ...rig, barrel: { value: 60, unit: 'gal' }, bucket: { value: 2, unit: 'gal' } },
    timedBuckets: [46, 46, 46],
  };
  await act(workbook, (s) => keepRig(s, kept, 'US'));
  await act(workbook, (s) =>
    keepMix(s, { mix: [{ product: POWDER.name, rate: RATE }], products: [POWDER] }, 'US'),
  );
  const asked = roundInput(await gardenOf(workbook), { start: 7 * 3600 });
  const plan = Array.isArray(asked) ? asked : planRound(asked);
  // 4 × 0.75 + 2 × 0.25 + 2 × 0.6 gal and the hose's 0.797 gal, in one fill.
  expect(plan).toMatchObject({ totals: { fills: 1 }, counts: [{ count: 17 }, { count: 14 }, { count: 6 }] });
  expect('totals' in plan && plan.totals.need / 3.785411784).toBeCloseTo(5.4969, 4);
});
