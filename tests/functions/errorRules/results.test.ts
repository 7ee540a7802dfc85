import { describe, expect, test } from 'vitest';
import { call } from '../../../functions';
import { outcome, refused, table } from './calls';

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
      [['FILLPLAN', 1.7e308, 1.6e308, 'L', 1e308], 'need: 1.7e+308 was given, which takes the result beyond'],
      [['FILLPLAN', 1e308, 1e-10, 'gal'], 'which takes more than 500 fills'],
      [['MEASURE', 1e308, 'gal', 1], 'amount: 1e+308 gal was given; use 1000000000 tsp at most.'],
      [['MEASURE', 1.797e308, 'gal', 1.797e308], 'amount: 1.797e+308 gal was given; use 1e+300 tsp at most.'],
      [['MEASURE', 1.7e308, 'g', 1e305], 'amount: 1.7e+308 g was given; use 1e+300 g at most.'],
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
    expect(call('INUNITS', [0, 'gal', 'L'])).toEqual({ value: 0 });
    expect(call('INUNITS', [0, 'lb', 'cup', 0.8])).toEqual({ value: 0 });
    expect(call('INUNITS', [0, 'tbsp/gal', 'mL/L'])).toEqual({ value: 0 });
    expect(call('INUNITS', [0, 'C', 'F'])).toEqual({ value: 32 });
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

  test('may be a measure that is as large as the finest step lets it be', () => {
    expect(call('MEASURE', [1, 'mL'])).toEqual({ value: '1 mL' });
    expect(call('MEASURE', [0.5, 'mL'])).toEqual({ value: '1 mL' });
    expect(call('MEASURE', [0.125, 'tsp'])).toEqual({ value: '1/4 tsp' });
    expect(call('MEASURE', [1e9, 'g'])).toEqual({ value: '1000000 kg' });
    expect(call('MEASURE', [1e300, 'g', 1e300])).toHaveProperty('value');
  });

  test('an array has one row a fill, up to 500', () => {
    expect(call('FILLPLAN', [500, 1, 'L'])).toHaveProperty('value.length', 500);
    expect(call('FILLPLAN', [10, 60, 'gal', 5])).toEqual({ value: [[1, 15, 10]] });
    expect(call('FILLPLAN', [10, [[60]], 'gal', 5, 0, ' EQUAL '])).toEqual({ value: [[1, 15, 10]] });
  });
});
