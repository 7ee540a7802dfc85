import { afterEach, describe, expect, test } from 'vitest';
import type { AdoptedPlant, Inventory } from '../../addin/core';
import type { MemoryWorkbook } from '../../addin/workbook/memoryWorkbook';
import { adoptList } from '../../addin/workbook/useCases/adoptList';
import { keepMix, type KeptProduct } from '../../addin/workbook/useCases/keepMix';
import { keepRig } from '../../addin/workbook/useCases/keepRig';
import { act, gardenOf, newGardenWorkbook } from './gardens';
import { openHeadlessGrid, type HeadlessGrid } from './headlessGrid';

// The formulas of the sheets, computed by the workbench's own engine with the real functions.

let grid: HeadlessGrid | undefined;
afterEach(() => grid?.close());

const plant = (
  name: string,
  bed: string,
  sizeClass: AdoptedPlant['sizeClass'],
  count: number,
): AdoptedPlant => ({
  plant: name,
  bed,
  sizeClass,
  roseClass: '',
  pot: false,
  count,
  notes: '',
  sourceRows: [],
});

const adopted = (plants: AdoptedPlant[]): Inventory => ({ plants }) as unknown as Inventory;

const POWDER: KeptProduct = {
  name: 'Soluble powder 20-20-20',
  form: 'powder',
  density: 0.9,
  N: 20,
  P2O5: 20,
  greatestRate: { value: 1, unit: 'tbsp/gal' },
  pack: { value: 5, unit: 'lb' },
  price: 20,
};
const SEAWEED: KeptProduct = { name: 'Seaweed', form: 'liquid', N: 1 };

const withRig = async (workbook: MemoryWorkbook, seconds: readonly number[]) => {
  const { rig } = await gardenOf(workbook);
  const kept = {
    rig: { ...rig, barrel: { value: 60, unit: 'gal' }, bucket: { value: 2, unit: 'gal' } },
    timedBuckets: seconds,
  };
  await act(workbook, (snapshot) => keepRig(snapshot, kept, 'US'));
};

const open = async (workbook: MemoryWorkbook) => (grid = await openHeadlessGrid(workbook.inspect()));

describe('an empty garden shows what is missing and no wrong number', () => {
  test('the flow says that it is not timed, counts and spread stay blank', async () => {
    const workbook = await newGardenWorkbook();
    const { value } = await open(workbook);
    expect(value('Rig', 7, 1)).toBe('not timed yet');
    expect([value('Rig', 9, 1), value('Rig', 10, 1)]).toEqual(['', '']);
    expect([value('Doses', 5, 3), value('Doses', 5, 4), value('Doses', 5, 5)]).toEqual(['', '', 0]);
  });

  test('text among the timed buckets is an error in the flow, not left out', async () => {
    const workbook = await newGardenWorkbook();
    workbook.user.type('Rig', 4, 5, 'about 46');
    workbook.user.type('Rig', 5, 5, 46);
    expect((await open(workbook)).value('Rig', 7, 1)).toBe('#VALUE!');
  });
});

describe('a garden with a rig', () => {
  test('flow, spread and repeats follow from the timed buckets', async () => {
    const workbook = await newGardenWorkbook();
    await withRig(workbook, [46, 47, 45]);
    const { value } = await open(workbook);
    // 3 × 2 gal in 138 s; sample standard deviation 1 s of 46 s; smallest n from 3 on with t(0.975, n−1) · 2.17 ÷ √n ≤ 5.
    expect(value('Rig', 7, 1)).toBeCloseTo((6 / 138) * 60, 9);
    expect(value('Rig', 9, 1)).toBeCloseTo(100 / 46, 9);
    expect(value('Rig', 10, 1)).toBe(4);
  });

  test('the hose holds the cylinder of its length and bore', async () => {
    const { value } = await open(await newGardenWorkbook());
    // 50 ft of 5/8 in, 231 cubic inches to the gallon.
    expect(value('Rig', 14, 1)).toBeCloseTo(((Math.PI / 4) * 0.625 ** 2 * 600) / 231, 9);
  });

  test('counts, what they give, and plants of each size follow', async () => {
    const workbook = await newGardenWorkbook();
    await withRig(workbook, [46, 47, 45]);
    const list = adopted([
      plant('Ada', 'East', 'Large bush', 3),
      plant('Bea', 'East', 'Miniature', 2),
      plant('Cleo', 'West', 'Large bush', 1),
    ]);
    await act(workbook, (snapshot) => adoptList(snapshot, list, 'US').change);
    const { value, set } = await open(workbook);
    // 0.75 gal ÷ 2.6087 gal/min = 17.25 s, kept as 17 s, which give 0.7391 gal.
    expect([value('Doses', 5, 3), value('Doses', 5, 5)]).toEqual([17, 4]);
    expect(value('Doses', 5, 4)).toBeCloseTo(17 / 23, 9);
    expect([value('Plants', 4, 6), value('Plants', 4, 7), value('Plants', 4, 8)]).toEqual([0.75, 17, 2.25]);
    expect([value('Beds', 4, 3), value('Beds', 4, 4)]).toEqual([5, 2.85]);
    expect([value('Beds', 5, 3), value('Beds', 5, 4)]).toEqual([1, 0.75]);

    await set('Doses', 5, 1, 1);
    expect([value('Doses', 5, 3), value('Plants', 4, 7), value('Beds', 5, 4)]).toEqual([23, 23, 1]);
    await set('Rig', 17, 1, 5);
    expect([value('Doses', 5, 3), value('Plants', 6, 7)]).toEqual([25, 25]);
  });

  test('plants whose size has no dose are an error where solution is summed, not a silent nothing', async () => {
    const workbook = await newGardenWorkbook();
    const list = adopted([plant('Ada', 'East', 'Large bush', 3), plant('Bea', 'West', 'Not known', 2)]);
    await act(workbook, (snapshot) => adoptList(snapshot, list, 'US').change);
    const { value, set } = await open(workbook);
    expect([value('Plants', 5, 6), value('Plants', 5, 7), value('Plants', 5, 8)]).toEqual([
      'no dose',
      '',
      '#VALUE!',
    ]);
    expect([value('Beds', 4, 4), value('Beds', 5, 4)]).toEqual([2.25, '#VALUE!']);
    await set('Doses', 13, 1, 0.5);
    expect([value('Plants', 5, 6), value('Beds', 5, 4)]).toEqual([0.5, 1]);
    await set('Plants', 5, 2, 'Gigantic');
    expect([value('Plants', 5, 6), value('Beds', 5, 4)]).toEqual(['no dose', '#VALUE!']);
  });

  test('a number typed over the flow is used instead of the timed buckets', async () => {
    const workbook = await newGardenWorkbook();
    await withRig(workbook, [46, 47, 45]);
    workbook.user.type('Rig', 7, 1, 3);
    expect((await open(workbook)).value('Doses', 5, 3)).toBe(15);
  });
});

describe('the mix', () => {
  const mixed = async () => {
    const workbook = await newGardenWorkbook();
    await withRig(workbook, [46]);
    const mix = [
      { product: POWDER.name, rate: { value: 1, unit: 'tbsp/gal' } },
      { product: SEAWEED.name, rate: { value: 8, unit: 'fl oz/100 gal' } },
    ];
    await act(workbook, (snapshot) => keepMix(snapshot, { mix, products: [POWDER, SEAWEED] }, 'US'));
    return open(workbook);
  };

  test('says what a full barrel takes, and what it costs', async () => {
    const { value } = await mixed();
    expect([value('Mix', 5, 4), value('Mix', 5, 5)]).toEqual([60, 'tbsp']);
    expect(value('Mix', 6, 4)).toBeCloseTo(4.8, 9);
    // 60 tbsp of 14.78676… mL at 0.9 g/mL, 20 for 5 lb of 453.59237 g.
    expect(value('Mix', 5, 10)).toBeCloseTo((60 * 14.78676478125 * 0.9 * 20) / (5 * 453.59237), 9);
    expect(value('Products', 4, 14)).toBe(4);
  });

  test('tells the food in ppm, and which density is missing', async () => {
    const { value } = await mixed();
    // 1 tbsp in a gallon is 1/256 L in a litre: 3.90625 mL × 0.9 g/mL × 20 %.
    expect(value('Mix', 5, 6)).toBeCloseTo((1000 / 256) * 0.9 * 0.2 * 1000, 6);
    expect([value('Mix', 5, 8), value('Mix', 6, 6)]).toEqual(['', 'needs density']);
  });

  test('compares rates with the label', async () => {
    const { value, set } = await mixed();
    expect([value('Mix', 5, 3), value('Mix', 6, 3)]).toEqual(['within the label', "label's rate not given"]);
    await set('Mix', 5, 1, 1.01);
    // Said beside the rate and the label, and no amount of it stands anywhere.
    expect([value('Mix', 5, 3), value('Mix', 5, 4)]).toEqual(['above the label', 'above the label']);
    expect([value('Mix', 5, 10), value('Products', 4, 9)]).toEqual(['', 'above the label']);
  });

  test('follows the barrel and its fill line', async () => {
    const { value, set } = await mixed();
    await set('Rig', 5, 1, 0.5);
    expect(value('Mix', 5, 4)).toBe(30);
    await set('Rig', 4, 1, 30);
    expect(value('Mix', 5, 4)).toBe(15);
  });
});
