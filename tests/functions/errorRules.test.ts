import { describe, expect, test } from 'vitest';
import type { RawArgument } from '../../functions';
import { call, catalogue } from '../../functions';

type Call = readonly [name: string, ...args: RawArgument[]];

const outcome = ([name, ...args]: Call) => call(name, args);
const told = ([name, ...args]: Call): string => `${name} ${JSON.stringify(args)}`;
const table = <R extends readonly unknown[]>(rows: readonly (readonly [Call, ...R])[]) =>
  rows.map(([made, ...rest]) => [told(made), made, ...rest] as const);

const refused = (error: string, words: string) => ({ error, sentence: expect.stringContaining(words) });

describe('an argument of the wrong kind or out of its range is #VALUE!, in a sentence', () => {
  test.each(
    table<[string]>([
      [['DILUTE', -1, 'tbsp/gal', 60, 'gal', 'cup'], 'rate: -1 was given; use 0 or more.'],
      [
        ['DILUTE', 'one', 'tbsp/gal', 60, 'gal', 'cup'],
        'rate: the text "one" was given; use a number, 0 or more.',
      ],
      [
        ['DILUTE', '1', 'tbsp/gal', 60, 'gal', 'cup'],
        'rate: the text "1" was given; use a number, 0 or more.',
      ],
      [
        ['DILUTE', 1, 'tbsp/gal', ' ', 'gal', 'cup'],
        'volume: the text " " was given; use a number, 0 or more.',
      ],
      [['DILUTE', 1, 'tbsp/gal', NaN, 'gal', 'cup'], 'volume: no number was given; use 0 or more.'],
      [['DILUTE', 1, 'tbsp/gal', Infinity, 'gal', 'cup'], 'volume: Infinity was given; use 0 or more.'],
      [['DILUTE', 1, 'tbsp/gal', 60, 'gal', 'cup', -0.5], 'density: -0.5 was given; use more than 0.'],
      [
        ['DILUTE', 1, 'tbsp/gal', 60, 'gal', 'cup', 'x'],
        'density: the text "x" was given; use a number, more than 0.',
      ],
      [['DILUTE', 1, 7, 60, 'gal', 'cup'], 'rate_unit: 7 was given; use a rate'],
      [['DILUTE', 1, true, 60, 'gal', 'cup'], 'rate_unit: TRUE was given; use a rate'],
      [['STRENGTH', 1, 'cup', 0, 'gal', 'tbsp/gal'], 'volume: 0 was given; use more than 0.'],
      [['STOCK', 0.99, 60, 'gal'], 'parts: 0.99 was given; use 1 or more.'],
      [['STOCK', 100, 60, 'gal', 'of'], 'convention: "of" was given; use "in" or "plus".'],
      [['STOCK', 100, 60, 'gal', 2], 'convention: 2 was given; use "in" or "plus".'],
      [['MEASURE', 0, 'cup'], 'amount: 0 was given; use more than 0.'],
      [
        ['MEASURE', 0.1, 'tsp'],
        'amount: 0.1 tsp was given; use 0.125 tsp or more, half of the finest measure.',
      ],
      [['MEASURE', 2, 'mL', 5], 'amount: 2 mL was given; use 2.5 mL or more, half of the finest measure.'],
      [['MEASURE', 1, 'gal', -1], 'finest: -1 was given; use more than 0.'],
      [['MEASURE', 1, 'gal', 1e-12], 'finest: 1e-12 tsp was given; use 7.68e-7 tsp or more.'],
      [['MEASURE', 1e30, 'gal'], 'amount: 1e+30 gal was given; use 250000000 tsp at most.'],
      [['FORPPM', 200, 0, 100, 'gal', 'oz'], 'percent: 0 was given; use more than 0, at most 100.'],
      [['FORPPM', 200, 101, 100, 'gal', 'oz'], 'percent: 101 was given; use more than 0, at most 100.'],
      [['PPM', 1, 'oz', 101, 100, 'gal'], 'percent: 101 was given; use 0 to 100.'],
      [['PPM', 1, 'oz', 20, 0, 'gal'], 'volume: 0 was given; use more than 0.'],
      [['ELEMENT', -1, 'P2O5', 'P'], 'percent: -1 was given; use 0 to 100.'],
      [['PREMIX', 1, 'kg', 0, 'L'], 'solubility: 0 was given; use more than 0.'],
      [['PREMIX', 1, 'kg', 200, 'L', 1.01], 'margin: 1.01 was given; use more than 0, at most 1.'],
      [['BARREL', -1, 22, 'in', 'gal'], 'depth: -1 was given; use 0 or more.'],
      [['BARREL', 30, 0, 'in', 'gal'], 'width: 0 was given; use more than 0.'],
      [['BARREL', 30, 22, 'in', 'gal', -2], 'surface_width: -2 was given; use more than 0.'],
      [['WEIGHT', 60, 'gal', 'lb', -5], 'empty_weight: -5 was given; use 0 or more.'],
      [['FILLS', 200, 0, 'gal'], 'barrel: 0 was given; use more than 0.'],
      [
        ['FILLS', 200, 60, 'gal', 60],
        'heel: 60 gal was given; use less than barrel × fill_line, which is 60 gal.',
      ],
      [
        ['FILLS', 200, 60, 'gal', 54, 0.9],
        'heel: 54 gal was given; use less than barrel × fill_line, which is 54 gal.',
      ],
      [['FILLS', 200, 60, 'gal', 5, 1.1], 'fill_line: 1.1 was given; use more than 0, at most 1.'],
      [['FILLPLAN', 0, 60, 'gal'], 'need: 0 was given; use more than 0.'],
      [
        ['FILLPLAN', 501, 1, 'L'],
        'need: 501 L was given, which takes more than 500 fills; use a smaller need',
      ],
      [['FILLPLAN', 60, 20, 'L', 0, 1, 'half'], 'style: "half" was given; use "full" or "equal".'],
      [['FILLTIME', 60, 'gal', 0, 'gal/min'], 'flow: 0 was given; use more than 0.'],
      [['FLOW', 0, 'gal', 20, 'gal/min'], 'volume: 0 was given; use more than 0.'],
      [
        ['FLOW', 2, 'gal', [[20], [-1]], 'gal/min'],
        'seconds (row 2, column 1): -1 was given; use 0 or more.',
      ],
      [
        ['FLOW', 2, 'gal', [[20, '21']], 'gal/min'],
        'seconds (row 1, column 2): the text "21" was given; use a number',
      ],
      [['FLOWSPREAD', 'fast'], 'seconds: the text "fast" was given; use a number, 0 or more.'],
      [['REPEATS', [[24], [25]], 0], 'percent: 0 was given; use more than 0.'],
      [['SECONDS', 0, 'gal', 2.6, 'gal/min'], 'dose: 0 was given; use more than 0.'],
      [['SECONDS', 1, 'gal', 0, 'gal/min'], 'flow: 0 was given; use more than 0.'],
      [['SECONDS', 1, 'gal', 2.6, 'gal/min', -1], 'step: -1 was given; use more than 0.'],
      [['DOSE', -1, 2.6, 'gal/min', 'gal'], 'seconds: -1 was given; use 0 or more.'],
      [
        ['NEED', [[1], [-3]], [[1], [1]], 'gal', 'gal'],
        'plants (row 2, column 1): -3 was given; use 0 or more.',
      ],
      [['NEED', -3, 1, 'gal', 'gal'], 'plants: -3 was given; use 0 or more.'],
      [['NEED', [[1], [2]], [[1], ['1']], 'gal', 'gal'], 'dose (row 2, column 1): the text "1" was given'],
      [
        ['NEED', [[1], [2]], [[1, 2]], 'gal', 'gal'],
        'dose: a range of 1 × 2 cells was given and plants is a range of 2 × 1',
      ],
      [['NEED', [[1], [2]], 1, 'gal', 'gal'], 'use two ranges of one shape'],
      [['SERVES', 60, 'gal', 0, 'gal'], 'dose: 0 was given; use more than 0.'],
      [['PERPLANT', -1, 1, 'gal'], 'ppm: -1 was given; use 0 or more.'],
      [['UNITCOST', 48, 0, 'lb', 'oz'], 'pack: 0 was given; use more than 0.'],
      [['COST', 1, 'oz', -1, 25, 'lb'], 'price: -1 was given; use 0 or more.'],
      [['INUNITS', -1, 'gal', 'L'], 'value: -1 was given; use 0 or more.'],
      [['INUNITS', -460, 'F', 'C'], 'value: -460 was given; use a temperature of -459.67 F or more.'],
    ]),
  )('%s', (_told, made, words) => {
    expect(outcome(made)).toEqual(refused('#VALUE!', words));
  });
});

describe('a unit', () => {
  test.each(
    table<[string]>([
      [
        ['DILUTE', 1, 'tbsp/gallon', 60, 'gal', 'cup'],
        'rate_unit: "tbsp/gallon" is not a known rate unit; use an amount over a volume',
      ],
      [
        ['DILUTE', 1, 'tbsp/gal', 60, 'gallons', 'cup'],
        'volume_unit: "gallons" is not a known volume unit; use mL, L, tsp, tbsp, fl oz, cup, pt, qt, gal, imp fl oz, imp pt, imp qt, imp gal, m3, ft3.',
      ],
      [
        ['DILUTE', 1, 'tbsp/gal', 60, 'gal', 'cups'],
        'amount_unit: "cups" is not a known volume or mass unit; use mL, L',
      ],
      [
        ['FLOW', 2, 'gal', 20, 'gal/s'],
        'flow_unit: "gal/s" is not a known flow unit; use L/min, L/h, mL/s, gal/min, gal/h, imp gal/min.',
      ],
      [
        ['BARREL', 30, 22, 'inch', 'gal'],
        'length_unit: "inch" is not a known length unit; use mm, cm, m, in, ft, yd.',
      ],
      [['INUNITS', 1, 'furlong', 'm'], 'from_unit: "furlong" is not a known unit; use mL'],
      [
        ['ELEMENT', 20, 'N', 'P'],
        'from: "N" is not a known oxide or element; use P2O5, P, K2O, K, CaO, Ca, MgO, Mg.',
      ],
    ]),
  )('that is not known is #N/A with the known ones: %s', (_told, made, words) => {
    expect(outcome(made)).toEqual(refused('#N/A', words));
  });

  test.each(
    table<[string]>([
      [['DILUTE', 1, 'gal', 60, 'gal', 'cup'], 'rate_unit: "gal" was given; use a rate'],
      [['DILUTE', 1, 'gal/min', 60, 'gal', 'cup'], 'rate_unit: "gal/min" was given; use a rate'],
      [['DILUTE', 1, 'tbsp/gal', 60, 'lb', 'cup'], 'volume_unit: "lb" was given; use a volume unit: mL, L'],
      [
        ['DILUTE', 1, 'tbsp/gal', 60, 'tbsp/gal', 'cup'],
        'volume_unit: "tbsp/gal" was given; use a volume unit',
      ],
      [
        ['DILUTE', 1, 'tbsp/gal', 60, 'gal', 'ft'],
        'amount_unit: "ft" was given; use a volume or mass unit: mL',
      ],
      [['WEIGHT', 60, 'gal', 'gal'], 'weight_unit: "gal" was given; use a mass unit: mg, g, kg, oz, lb.'],
      [
        ['INUNITS', 1, 'gal', 'ft'],
        'to_unit: "ft" was given and does not convert from "gal"; use a volume or mass unit.',
      ],
      [['INUNITS', 1, 'gal', 'gpm'], 'to_unit: "gal/min" was given and does not convert from "gal"'],
      [
        ['INUNITS', 1, 'tbsp/gal', 'tbsp'],
        'to_unit: "tbsp" was given and does not convert from "tbsp/gal"; use another rate.',
      ],
      [['ELEMENT', 20, 'P2O5', 'K'], 'to: "K" was given and does not convert from "P2O5"; use P.'],
      [['ELEMENT', 20, 'P2O5', 'P2O5'], 'to: "P2O5" was given and does not convert from "P2O5"; use P.'],
    ]),
  )('of the wrong family, or that does not convert, is #VALUE!: %s', (_told, made, words) => {
    expect(outcome(made)).toEqual(refused('#VALUE!', words));
  });

  test.each([
    ['CUP', 'Tbsp/GAL'],
    [' cup ', '  tbsp / gal  '],
    ['cup', 'TBSP/1 gal'],
  ])('may be written %j and %j', (amountUnit, rateUnit) => {
    expect(call('DILUTE', [1, rateUnit, 60, ' Gal', amountUnit])).toEqual({ value: 3.75 });
  });

  test('the coldest temperature there is converts, and back', () => {
    expect(call('INUNITS', [-459.67, 'F', 'C'])).toEqual({ value: -273.15 });
    expect(call('INUNITS', [-459.67, 'F', 'F'])).toEqual({ value: -459.67 });
    expect(call('INUNITS', [-273.15, 'C', 'F'])).toEqual({ value: expect.closeTo(-459.67, 10) });
    const cold = call('INUNITS', [-273.15, 'C', 'F']);
    expect(call('INUNITS', ['value' in cold ? cold.value : '', 'F', 'C'])).toEqual({ value: -273.15 });
  });

  test('a rate per more than arithmetic holds is not known', () => {
    const endless = `oz/${'9'.repeat(320)} gal`;
    expect(call('DILUTE', [1, endless, 60, 'gal', 'oz'])).toEqual(refused('#N/A', 'rate_unit: "oz/999'));
    expect(call('INUNITS', [1, endless, 'g/L'])).toEqual(refused('#N/A', 'from_unit: "oz/999'));
  });

  test('imperial is not US', () => {
    expect(call('INUNITS', [1, 'Imp  Gal', 'gal'])).toEqual({ value: 4.54609 / 3.785411784 });
  });
});

describe('between volume and mass without a density', () => {
  test.each(
    table<[]>([
      [['DILUTE', 1, 'tbsp/gal', 60, 'gal', 'oz']],
      [['DILUTE', 1, 'oz/gal', 60, 'gal', 'cup', 0]],
      [['STRENGTH', 1, 'lb', 60, 'gal', 'tbsp/gal', '']],
      [['FORPPM', 200, 20, 100, 'gal', 'tbsp', null]],
      [['PPM', 1, 'cup', 20, 100, 'gal']],
      [['PREMIX', 1, 'cup', 200, 'L']],
      [['INUNITS', 1, 'cup', 'g']],
      [['INUNITS', 1, 'tbsp/gal', 'g/L']],
      [['UNITCOST', 10, 1, 'gal', 'lb']],
      [['COST', 1, 'cup', 10, 5, 'lb']],
    ]),
  )('%s is #VALUE!', (_told, made) => {
    expect(outcome(made)).toEqual(refused('#VALUE!', 'density: nothing was given'));
  });

  test('the density decides', () => {
    expect(call('DILUTE', [2, 'mL/L', 200, 'L', 'g', 1.2])).toEqual({ value: 480 });
    expect(call('INUNITS', [1, 'g/L', 'mL/L', 0.5])).toEqual({ value: 2 });
  });

  // A product of 0.8 g/mL: 2 mL weigh 1.6 g.
  test.each(
    table<[number]>([
      [['INUNITS', 2, 'mL', 'g', 0.8], 1.6],
      [['DILUTE', 2, 'mL/L', 10, 'L', 'g', 0.8], 16],
      [['DILUTE', 1.6, 'g/L', 10, 'L', 'mL', 0.8], 20],
      [['STRENGTH', 16, 'g', 10, 'L', 'mL/L', 0.8], 2],
      [['FORPPM', 160, 10, 10, 'L', 'mL', 0.8], 20],
      [['PPM', 20, 'mL', 10, 10, 'L', 0.8], 160],
      [['PREMIX', 2, 'L', 200, 'L', 0.5, 0.8], 16],
      [['UNITCOST', 30, 2, 'L', 'kg', 0.8], 18.75],
      [['UNITCOST', 30, 1.6, 'kg', 'L', 0.8], 15],
      [['COST', 800, 'g', 30, 2, 'L', 0.8], 15],
    ]),
  )('in every function: %s', (_told, made, value) => {
    expect(outcome(made)).toEqual({ value: expect.closeTo(value, 10) });
  });

  test('the table names every function that takes one', () => {
    const taking = catalogue.filter(({ parameters }) => parameters.some(({ name }) => name === 'density'));
    const shown = ['COST', 'DILUTE', 'FORPPM', 'INUNITS', 'PPM', 'PREMIX', 'STRENGTH', 'UNITCOST'];
    expect(taking.map(({ name }) => name).sort()).toEqual(shown);
  });
});

describe('too few readings', () => {
  test.each(
    table<[string]>([
      [['FLOW', 2, 'gal', '', 'gal/min'], 'seconds: no reading was given; use one timed bucket or more.'],
      [['FLOW', 2, 'gal', [[''], [0], [null]], 'gal/min'], 'seconds: no reading was given'],
      [['FLOWSPREAD', [[24], ['']]], 'seconds: 1 reading was given; use two timed buckets or more.'],
      [['FLOWSPREAD', 0], 'seconds: no reading was given'],
      [['REPEATS', 24, 5], 'seconds: 1 reading was given'],
      [
        ['REPEATS', [[10], [30]], 5],
        'percent: 5 was given; with a spread of 70.7107 % even 200 timed buckets',
      ],
    ]),
  )('%s is #N/A', (_told, made, words) => {
    expect(outcome(made)).toEqual(refused('#N/A', words));
  });

  test('blank and 0 cells are left out of them', () => {
    const gappy: RawArgument = [
      [24.1, ''],
      [0, 24.6],
      [null, 23.9],
      [false, undefined],
    ];
    expect(call('FLOW', [2, 'gal', gappy, 'gal/min'])).toEqual(
      call('FLOW', [2, 'gal', [[24.1, 24.6, 23.9]], 'gal/min']),
    );
    expect(call('FLOWSPREAD', [gappy])).toEqual(call('FLOWSPREAD', [[[24.1], [24.6], [23.9]]]));
    expect(call('REPEATS', [gappy, 2])).toEqual({ value: 5 });
  });

  test('equal readings still ask for three', () => {
    expect(call('REPEATS', [[[24, 24]], 5])).toEqual({ value: 3 });
    expect(call('FLOWSPREAD', [[[24, 24]]])).toEqual({ value: 0 });
  });
});

describe('an optional argument is left out by', () => {
  const calls: readonly (readonly [Call, number])[] = [
    [['DILUTE', 1, 'tbsp/gal', 60, 'gal', 'cup'], 1],
    [['STOCK', 100, 60, 'gal'], 1],
    [['MEASURE', 3.75, 'cup'], 1],
    [['PREMIX', 800, 'g', 200, 'L'], 2],
    [['BARREL', 30, 20, 'in', 'gal'], 1],
    [['WEIGHT', 60, 'gal', 'lb'], 1],
    [['FILLS', 200, 60, 'gal'], 2],
    [['FILLPLAN', 200, 60, 'gal'], 3],
    [['SECONDS', 1, 'gal', 2.6, 'gal/min'], 1],
    [['UNITCOST', 48, 25, 'lb', 'oz'], 1],
    [['COST', 8, 'oz', 48, 25, 'lb'], 1],
  ];

  test('the table names every function that has one', () => {
    const optional = catalogue.filter(({ parameters }) => parameters.some((parameter) => parameter.optional));
    const shown = calls.map(([[name]]) => name);
    const needing = ['INUNITS', 'STRENGTH', 'FORPPM', 'PPM'];
    expect([...shown, ...needing].sort()).toEqual(optional.map(({ name }) => name).sort());
  });

  test.each([
    [0],
    [''],
    [null],
    [undefined],
    [false],
    [[['']]],
    [[[0]]],
    [[[null]]],
    ['  '],
  ] as RawArgument[][])('%j', (nothing) => {
    for (const [made, many] of calls) {
      const [name, ...args] = made;
      const given = [...args, ...Array.from({ length: many }, () => nothing)];
      expect(call(name, given), told(made)).toEqual(call(name, args));
      expect(call(name, given), told(made)).toHaveProperty('value');
    }
  });
});

describe('a required argument', () => {
  test.each(
    table<[string]>([
      [['DILUTE', null, 'tbsp/gal', 60, 'gal', 'cup'], 'rate: nothing was given; use a number, 0 or more.'],
      [['DILUTE', 1, 'tbsp/gal', 60, 'gal'], 'amount_unit: nothing was given; use a volume or mass unit'],
      [['DILUTE', 1, '', 60, 'gal', 'cup'], 'rate_unit: nothing was given; use a rate'],
      [['DILUTE', 1, 0, 60, 'gal', 'cup'], 'rate_unit: 0 was given; use a rate'],
      [['FLOW', 2, 'gal', null, 'gal/min'], 'seconds: nothing was given; use a range of cells'],
      [['NEED', [[1]]], 'dose: nothing was given; use a range of cells'],
      [['INUNITS'], 'value: nothing was given; use a number.'],
    ]),
  )('that is missing is #VALUE!: %s', (_told, made, words) => {
    expect(outcome(made)).toEqual(refused('#VALUE!', words));
  });

  test.each(
    table<[number]>([
      [['DILUTE', '', 'tbsp/gal', 60, 'gal', 'cup'], 0],
      [['DILUTE', 1, 'tbsp/gal', 0, 'gal', 'cup'], 0],
      [['INUNITS', '', 'C', 'F'], 32],
      [['FILLS', [['']], 60, 'gal'], 0],
      [['NEED', '', 0, 'gal', 'gal'], 0],
      [['DOSE', [[null]], 2.6, 'gal/min', 'gal'], 0],
      [['PPM', 1, 'oz', 0, 100, 'gal'], 0],
      [['SERVES', 0, 'gal', 1, 'gal'], 0],
    ]),
  )('that is blank counts as 0, where 0 makes sense: %s', (_told, made, value) => {
    expect(outcome(made)).toEqual({ value });
  });

  test('that is blank is refused where 0 makes no sense', () => {
    expect(call('STRENGTH', [1, 'cup', '', 'gal', 'tbsp/gal'])).toEqual(
      refused('#VALUE!', 'volume: nothing was given; use more than 0.'),
    );
  });
});

describe('arguments as hosts hand them over', () => {
  test('TRUE and FALSE count as 1 and 0', () => {
    expect(call('DILUTE', [true, 'tbsp/gal', 60, 'gal', 'cup'])).toEqual({ value: 3.75 });
    expect(call('DILUTE', [false, 'tbsp/gal', 60, 'gal', 'cup'])).toEqual({ value: 0 });
    expect(call('NEED', [[[true], [true]], [[2], [3]], 'L', 'L'])).toEqual({ value: 5 });
  });

  test('a 1 × 1 range is its one value', () => {
    expect(call('DILUTE', [[[1]], [['tbsp/gal']], [[60]], [['gal']], [['cup']]])).toEqual({ value: 3.75 });
  });

  test.each([[[[1, 2]]], [[[1], [2]]], [[[['a', 'b']]]]] as RawArgument[][])(
    'a larger range where one value belongs is #VALUE!: %j',
    (range) => {
      expect(call('DILUTE', [range, 'tbsp/gal', 60, 'gal', 'cup'])).toHaveProperty('error', '#VALUE!');
      expect(call('DILUTE', [1, range, 60, 'gal', 'cup'])).toHaveProperty('error', '#VALUE!');
      expect(call('DILUTE', [1, 'tbsp/gal', 60, 'gal', 'cup', range])).toHaveProperty('error', '#VALUE!');
    },
  );

  test('a range argument may be a single cell', () => {
    expect(call('NEED', [12, 2, 'L', 'L'])).toEqual({ value: 24 });
    expect(call('FLOW', [10, 'L', 30, 'L/min'])).toEqual({ value: 20 });
  });

  test('too many arguments are #VALUE!, unless the last ones are left out', () => {
    expect(call('PERPLANT', [200, 1, 'gal', 7])).toEqual(
      refused('#VALUE!', 'PERPLANT: 4 arguments were given; use 3 at most.'),
    );
    expect(call('PERPLANT', [200, 1, 'L', null, undefined])).toEqual({ value: 200 });
  });
});

describe('an error value as an argument', () => {
  const error = { error: '#DIV/0!' };

  test.each(
    catalogue.flatMap((entry) =>
      entry.parameters.map((parameter, index) => [entry, parameter, index] as const),
    ),
  )('comes out unchanged, whichever argument it is', (entry, parameter, index) => {
    const args = [...entry.examples[0]!.args];
    args[index] = error;
    expect(call(entry.name, args), parameter.name).toEqual(error);
    args[index] = [[error]];
    expect(call(entry.name, args), parameter.name).toEqual(error);
  });

  test('comes out from within a range, the first in reading order', () => {
    const range: RawArgument = [
      [1, 2],
      [{ error: '#REF!' }, error],
    ];
    expect(call('NEED', [range, range, 'gal', 'gal'])).toEqual({ error: '#REF!' });
    expect(call('FLOWSPREAD', [[[24], [error], ['x']]])).toEqual(error);
  });

  test('comes before every other complaint, the first argument’s first', () => {
    expect(call('DILUTE', [-1, 'nonsense', { error: '#N/A' }, error, 'cup'])).toEqual({ error: '#N/A' });
    expect(call('PERPLANT', [1, 1, 'gal', 1, error])).toEqual(error);
  });
});

describe('a result', () => {
  test.each(
    table<[string]>([
      [
        ['DILUTE', 1e300, 'tbsp/gal', 1e300, 'gal', 'cup'],
        'rate: 1e+300 was given, which takes the result beyond',
      ],
      [
        ['NEED', [[1e308], [1e308]], [[1], [1]], 'gal', 'gal'],
        'plants: a range of 2 × 1 cells was given, which takes',
      ],
      [['FILLS', 1e308, 1e-10, 'gal'], 'need: 1e+308 was given, which takes the result beyond'],
      [['WEIGHT', 1e308, 'gal', 'mg'], 'volume: 1e+308 was given'],
      [['REPEATS', [[1e-300], [1e300]], 5], 'seconds: a range of 2 × 1 cells was given, which takes'],
      [['FILLPLAN', 5e-324, 2, 'mL'], 'need: 5e-324 mL was given, which arithmetic cannot tell from 0'],
      [['FILLS', 5e-324, 2, 'mL'], 'need: 5e-324 mL was given, which arithmetic cannot tell from 0'],
      [['FILLPLAN', 1e308, 1e-10, 'gal'], 'which takes more than 500 fills'],
      [['MEASURE', 1e308, 'gal', 1], 'amount: 1e+308 gal was given; use 1000000000 tsp at most.'],
    ]),
  )('beyond what a cell holds is #VALUE!: %s', (_told, made, words) => {
    expect(outcome(made)).toEqual(refused('#VALUE!', words));
  });

  test.each(
    table<[string]>([
      [['INUNITS', 1e-322, 'mL', 'm3'], 'value: 1e-322 was given, which arithmetic cannot tell from 0'],
      [['DILUTE', 1e-200, 'g/L', 1e-200, 'L', 'kg'], 'rate: 1e-200 was given, which arithmetic'],
      [['STRENGTH', 1e-320, 'mL', 1e10, 'gal', 'gal/mL'], 'amount: 1e-320 was given, which arithmetic'],
      [['STOCK', 1e300, 1e-320, 'L'], 'volume: 1e-320 was given, which arithmetic'],
      [['FORPPM', 1e-300, 100, 1e-200, 'L', 'g'], 'ppm: 1e-300 was given, which arithmetic'],
      [['ELEMENT', 5e-324, 'P2O5', 'P'], 'percent: 5e-324 was given, which arithmetic'],
      [['BARREL', 1, 1e-200, 'mm', 'm3'], 'width: 1e-200 was given, which arithmetic'],
      [['WEIGHT', 1e-322, 'mL', 'lb'], 'volume: 1e-322 was given, which arithmetic'],
      [['FLOW', 1e-320, 'mL', 1e300, 'L/min'], 'volume: 1e-320 was given, which arithmetic'],
      [['SECONDS', 1e-320, 'mL', 1e10, 'L/min'], 'dose: 1e-320 was given, which arithmetic'],
      [['NEED', [[1e-200], [0]], [[1e-200], [7]], 'L', 'L'], 'dose: a range of 2 × 1 cells was given, which'],
      [['COST', 1e-200, 'oz', 1e-200, 1, 'lb'], 'amount: 1e-200 was given, which arithmetic'],
    ]),
  )('is never 0 for want of digits: %s', (_told, made, words) => {
    expect(outcome(made)).toEqual(refused('#VALUE!', words));
  });

  test('is 0 where 0 is the answer', () => {
    expect(call('INUNITS', [32, 'F', 'C'])).toEqual({ value: 0 });
    expect(call('SERVES', [0.5, 'L', 1, 'L'])).toEqual({ value: 0 });
    expect(call('NEED', [[[1, 0]], [['', 2]], 'L', 'L'])).toEqual({ value: 0 });
    expect(call('FLOWSPREAD', [[[24, 24]]])).toEqual({ value: 0 });
  });

  test('is as sure for very small and very large readings as for ordinary ones', () => {
    const ordinary = call('FLOWSPREAD', [[[1, 2]]]);
    expect(call('FLOWSPREAD', [[[1e-200, 2e-200]]])).toEqual(ordinary);
    expect(call('FLOWSPREAD', [[[1e200, 2e200]]])).toEqual(ordinary);
    expect(call('REPEATS', [[[1e-200, 1.1e-200]], 5])).toEqual(call('REPEATS', [[[1, 1.1]], 5]));
  });

  test('an array has one row a fill, up to 500', () => {
    expect(call('FILLPLAN', [500, 1, 'L'])).toHaveProperty('value.length', 500);
    expect(call('FILLPLAN', [10, 60, 'gal', 5])).toEqual({ value: [[1, 15, 10]] });
    expect(call('FILLPLAN', [10, [[60]], 'gal', 5, 0, ' EQUAL '])).toEqual({ value: [[1, 15, 10]] });
  });
});

test('arguments that are no list are refused', () => {
  for (const args of [undefined, null, 5, 'x', {}] as unknown as RawArgument[][]) {
    expect(call('DILUTE', args)).toEqual(refused('#VALUE!', 'arguments:'));
  }
});
