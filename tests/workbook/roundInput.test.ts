import { describe, expect, test } from 'vitest';
import type { Refusal, RoundInput } from '../../addin/core';
import type { Bed, Garden, MixRow, Plant, Product, RigSheet } from '../../addin/workbook/garden';
import { roundInput } from '../../addin/workbook/roundInput';
import { blankRig } from './blankRig';
import { walkOf } from '../../addin/workbook/walk';

const GALLON = 3.785411784;

const RIG: RigSheet = {
  ...blankRig,
  barrel: { value: 60, unit: 'gal' },
  heel: { value: 2, unit: 'qt' },
  hoseLength: { value: 50, unit: 'ft' },
  hoseBore: { value: 0.625, unit: 'in' },
  flow: { value: 2.6, unit: 'gal/min' },
  bucket: { value: 2, unit: 'gal' },
  tapFlow: { value: 18, unit: 'L/min' },
  emptyWeight: { value: 25, unit: 'lb' },
  fillLine: 0.95,
  betweenPlants: 4,
  wandStaysOpen: true,
  countStep: 1,
  premixTime: 10,
  moveTime: 5,
};

const plant = (bed: string, sizeClass: string, howMany: number): Plant => ({
  row: 4,
  plant: 'Ada',
  bed,
  sizeClass,
  howMany,
  roseClass: '',
  notes: '',
});

const bed = (name: string, walk?: number, station = ''): Bed => ({
  row: walk ?? 99,
  bed: name,
  station,
  ...(walk === undefined ? {} : { walk }),
});

const POWDER: Product = {
  row: 4,
  name: 'Powder',
  form: 'powder',
  density: 0.9,
  N: 20,
  K2O: 0,
  greatestRate: { value: 2, unit: 'tbsp/gal' },
  solubility: 400,
  pack: { value: 5, unit: 'lb' },
  price: 20,
};

const mixOf = (product: string, value: number, unit: string): MixRow => ({
  row: 5,
  product,
  rate: { value, unit },
});

const garden = (changes: Partial<Garden> = {}): Garden => ({
  settings: { gardenName: '', grower: '', measures: 'US', currency: '$', fillStyle: 'equal' },
  plants: [plant('East', 'Bush', 3)],
  beds: [bed('East', 1, 'A')],
  doseUnit: 'gal',
  doses: [{ row: 5, sizeClass: 'Bush', dose: 0.5 }],
  rig: RIG,
  timedBuckets: [],
  products: [POWDER],
  mixName: '',
  mix: [],
  problems: [],
  has: {
    plants: true,
    beds: true,
    doses: true,
    rig: true,
    timedBuckets: true,
    products: true,
    mix: true,
    settings: true,
  },
  ...changes,
});

const planned = (changes: Partial<Garden> = {}): RoundInput => {
  const made = roundInput(garden(changes), { start: 25_200 });
  if (Array.isArray(made)) throw new Error(made.map(({ refused }) => refused).join(' '));
  return made as RoundInput;
};

const refused = (changes: Partial<Garden>, options = {}): string[] => {
  const made = roundInput(garden(changes), { start: 25_200, ...options });
  return Array.isArray(made) ? (made as Refusal[]).map(({ refused: sentence }) => sentence) : [];
};

describe('the garden in the planner’s units', () => {
  test('every line of the rig is converted', () => {
    const { rig } = planned();
    expect(rig.barrel).toBeCloseTo(60 * GALLON, 9);
    expect(rig.heel).toBeCloseTo(GALLON / 2, 9);
    expect(rig.flow).toBeCloseTo(2.6 * GALLON, 9);
    expect(rig.tapFlow).toBe(18);
    // 600 in of a 5/8 in bore; a gallon is 231 cubic inches.
    expect(rig.hoseContent).toBeCloseTo(((Math.PI / 4) * 0.625 ** 2 * 600 * GALLON) / 231, 9);
    expect(rig.emptyWeight).toBeCloseTo(25 * 453.59237, 9);
    expect(rig).toMatchObject({
      fillLine: 0.95,
      betweenPlants: 4,
      wandStaysOpen: true,
      countStep: 1,
      premixTime: 600,
      moveTime: 300,
    });
  });

  test('what is blank and not needed is none', () => {
    const unit = { unit: 'gal' };
    const rig: RigSheet = {
      ...RIG,
      heel: unit,
      hoseLength: unit,
      emptyWeight: { unit: 'lb' },
      fillLine: undefined,
      betweenPlants: undefined,
      wandStaysOpen: undefined,
      countStep: undefined,
      premixTime: undefined,
      moveTime: undefined,
    };
    expect(planned({ rig }).rig).toMatchObject({
      heel: 0,
      hoseContent: 0,
      emptyWeight: 0,
      fillLine: 1,
      betweenPlants: 0,
      wandStaysOpen: false,
      countStep: 1,
      premixTime: 0,
      moveTime: 0,
    });
  });

  test('the flow is the typed one, else that of the timed buckets', () => {
    const timedBuckets = [40, 44];
    expect(planned({ timedBuckets }).rig.flow).toBeCloseTo(2.6 * GALLON, 9);
    const rig = { ...RIG, flow: { unit: 'gal/min' } };
    expect(planned({ timedBuckets, rig }).rig.flow).toBeCloseTo((4 / 84) * 60 * GALLON, 9);
  });

  test('hose content typed by the user counts before length and bore', () => {
    expect(planned({ rig: { ...RIG, hoseHolds: { value: 3, unit: 'L' } } }).rig.hoseContent).toBe(3);
  });

  test('plants are summed by bed and size in the order of the walk, whatever the spelling', () => {
    const plants = [
      plant('West', 'Bush', 2),
      plant('East', 'Mini', 1),
      plant('east ', 'BUSH', 3),
      plant('East', 'Bush', 4),
      plant('Late', 'Bush', 1),
      plant('West', 'Bush', 0),
    ];
    const doses = [
      { row: 5, sizeClass: 'Bush', dose: 0.5 },
      { row: 6, sizeClass: 'Mini', dose: 0.25 },
    ];
    const { groups, doses: given } = planned({ plants, doses, beds: [bed('West', 2), bed('East', 1, 'B')] });
    expect(groups).toEqual([
      { bed: 'East', station: 'B', sizeClass: 'Bush', plants: 7 },
      { bed: 'East', station: 'B', sizeClass: 'Mini', plants: 1 },
      { bed: 'West', station: 'B', sizeClass: 'Bush', plants: 2 },
      { bed: 'Late', station: 'B', sizeClass: 'Bush', plants: 1 },
    ]);
    expect(given[0]!.dose).toBeCloseTo(GALLON / 2, 9);
  });

  test('a product brings its rate, label, analysis and price in the kind of the rate', () => {
    const [product] = planned({ mix: [mixOf('powder', 1, 'tbsp/gal')] }).mix;
    expect(product).toMatchObject({ name: 'Powder', form: 'powder', density: 0.9, solubility: 400 });
    expect(product!.analysis).toEqual({ N: 0.2 });
    expect(product!.rate).toEqual({ kind: 'volume', volume: 1 / 256 });
    expect(product!.greatestRate).toEqual({ kind: 'volume', volume: 2 / 256 });
    // 20 for 5 lb; a litre weighs 900 g.
    expect(product!.unitPrice?.per).toBe('litre');
    expect(product!.unitPrice?.price).toBeCloseTo((20 / (5 * 453.59237)) * 900, 9);
  });

  test('a price that needs a density that is missing is left out', () => {
    const products = [{ ...POWDER, density: undefined }];
    expect(planned({ products, mix: [mixOf('Powder', 1, 'tbsp/gal')] }).mix[0]!.unitPrice).toBeUndefined();
    expect(planned({ products, mix: [mixOf('Powder', 1, 'g/L')] }).mix[0]!.unitPrice?.per).toBe('gram');
  });

  test('the garden’s way of filling and measures are taken over', () => {
    expect(planned()).toMatchObject({ style: 'equal', measures: 'US', start: 25_200 });
    expect(roundInput(garden(), { start: 0, style: 'full' })).toMatchObject({ style: 'full' });
  });
});

describe('what has to be mended is told, all of it', () => {
  test.each<[string, Partial<Garden>, string[]]>([
    ['no plants', { plants: [] }, ['There are no plants to feed: the Plants sheet lists none.']],
    [
      'no dose for a size that has plants',
      { plants: [plant('East', 'Bush', 1), plant('East', 'Giant', 1)] },
      ['Doses: none was given for “Giant”; use one for each size that has plants.'],
    ],
    [
      'a barrel, flow and tap that are blank',
      { rig: { ...RIG, barrel: { unit: 'gal' }, flow: { unit: 'gal/min' }, tapFlow: { unit: 'L/min' } } },
      [
        'Barrel: nothing was given; use what it holds, filled to the brim.',
        'Flow at the wand: nothing was given; time a bucket, or use a number above 0.',
        'Flow of the tap: nothing was given; use a number above 0.',
      ],
    ],
    [
      'a product that is not on the sheet',
      { mix: [mixOf('Mystery', 1, 'g/L')] },
      ['Mix: “Mystery” is not on the Products sheet; add it there, or take it out of the mix.'],
    ],
    [
      'a product that is spread dry',
      { products: [{ ...POWDER, form: 'dry' }], mix: [mixOf('Powder', 1, 'g/L')] },
      ['Mix: “Powder” is spread dry; use a powder or a liquid in the barrel.'],
    ],
  ])('%s', (_what, changes, sentences) => {
    expect(refused(changes)).toEqual(sentences);
  });

  test('rows that could not be read stop the plan unless the user leaves them out', () => {
    const problem = (place: 'garden' | 'rig', sentence: string) => ({ place, sheet: 'X', row: 1, sentence });
    const problems = [problem('garden', 'A row.'), problem('rig', 'A line.')];
    expect(refused({ problems })).toEqual(['A row.', 'A line.']);
    expect(refused({ problems }, { leaveOutUnread: true })).toEqual(['A line.']);
    expect(refused({ problems: problems.slice(0, 1) }, { leaveOutUnread: true })).toEqual([]);
  });

  test('many sizes without a dose are named shortly', () => {
    const plants = Array.from({ length: 8 }, (_, n) => plant('East', `Size ${n}`, 1));
    expect(refused({ plants })[0]).toContain('“Size 4” and 3 more;');
  });
});

test('the walk goes by number, then by row, then beds that only the plants name', () => {
  const beds = [
    bed('Last'),
    { ...bed('First', 1), row: 9 },
    { ...bed('Second', 1), row: 12 },
    bed('Zero', 0, 'Z'),
  ];
  expect(walkOf(beds, ['new', 'first', 'New']).map(({ bed: name, station }) => `${name} ${station}`)).toEqual(
    ['Zero Z', 'First Z', 'Second Z', 'Last Z', 'new Z'],
  );
  expect(walkOf([bed('Only')], [])).toEqual([{ bed: 'Only', station: 'A' }]);
});
