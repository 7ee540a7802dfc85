import { describe, expect, test } from 'vitest';
import { call, catalogue, type RawArgument } from '../../../functions';
import { outcome, refused, table, told, type Call } from './calls';

describe('an optional argument is left out by', () => {
  const calls: readonly (readonly [Call, number])[] = [
    [['DILUTE', 1, 'tbsp/gal', 60, 'gal', 'cup'], 1],
    [['STOCK', 100, 60, 'gal'], 1],
    [['MEASURE', 3.75, 'cup'], 1],
    [['MEASURABLE', 3.43, 'cup'], 1],
    [['HOWMUCH', 3.43, 'cup'], 1],
    [['MEASURED', 3.43, 'cup'], 1],
    [['LABELSHARE', 1, 'tbsp/gal', 2, 'tbsp/gal'], 1],
    [['PREMIX', 800, 'g', 200, 'L'], 2],
    [['BARREL', 30, 20, 'in', 'gal'], 1],
    [['WEIGHT', 60, 'gal', 'lb'], 1],
    [['FILLS', 200, 60, 'gal'], 2],
    [['FILLPLAN', 200, 60, 'gal'], 3],
    [['SECONDS', 1, 'gal', 2.6, 'gal/min'], 1],
    [['UNITCOST', 48, 25, 'lb', 'oz'], 1],
    [['COST', 8, 'oz', 48, 25, 'lb'], 1],
    [['HOWLONG', 94], 1],
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
