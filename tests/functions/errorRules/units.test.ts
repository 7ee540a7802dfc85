import { describe, expect, test } from 'vitest';
import { call } from '../../../functions';
import { outcome, refused, table } from './calls';

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
      [['ELEMENT', 20, 'K', 'P2O5'], 'to: "P2O5" was given and does not convert from "K"; use K2O.'],
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

  test('may have spaces around its slash, and a rate a part of a measure below it', () => {
    expect(call('DOSE', [30, 2, 'gal /min', 'gal'])).toEqual({ value: 1 });
    expect(call('DOSE', [30, 2, 'gal/ min', 'gal'])).toEqual({ value: 1 });
    expect(call('DILUTE', [1, 'g/0.25 L', 2, 'L', 'g'])).toEqual({ value: 8 });
    expect(call('INUNITS', [1, 'g / 0.25 L', 'g/L'])).toEqual({ value: 4 });
  });

  test('imperial is not US', () => {
    expect(call('INUNITS', [1, 'Imp  Gal', 'gal'])).toEqual({ value: 4.54609 / 3.785411784 });
  });
});
