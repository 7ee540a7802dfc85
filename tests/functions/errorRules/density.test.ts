import { describe, expect, test } from 'vitest';
import { call, catalogue } from '../../../functions';
import { outcome, refused, table } from './calls';

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
      [['LABELSHARE', 1, 'tbsp/gal', 2, 'g/L']],
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
      [['LABELSHARE', 2, 'mL/L', 0.8, 'g/L', 0.8], 2],
    ]),
  )('in every function: %s', (_told, made, value) => {
    expect(outcome(made)).toEqual({ value: expect.closeTo(value, 10) });
  });

  test('the table names every function that takes one', () => {
    const taking = catalogue.filter(({ parameters }) => parameters.some(({ name }) => name === 'density'));
    const shown = [
      'COST',
      'DILUTE',
      'FORPPM',
      'INUNITS',
      'LABELSHARE',
      'PPM',
      'PREMIX',
      'STRENGTH',
      'UNITCOST',
    ];
    expect(taking.map(({ name }) => name).sort()).toEqual(shown);
  });
});
