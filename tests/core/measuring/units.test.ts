import { describe, expect, test } from 'vitest';
import {
  addAmounts,
  amountIn,
  convert,
  density,
  findRateUnit,
  findUnit,
  fromRate,
  grams,
  knownUnits,
  litres,
  massOf,
  ofMass,
  ofVolume,
  shareOf,
  toAmount,
  toRate,
  volumeOf,
} from '../../../addin/core';

describe('units are found by their text', () => {
  test.each([
    ['gal', 'gal'],
    [' GAL ', 'gal'],
    ['Fl  Oz', 'fl oz'],
    ['imp fl oz', 'imp fl oz'],
    ['ml', 'mL'],
    ['l', 'L'],
    ['GPM', 'gal/min'],
    ['gph', 'gal/h'],
    ['gal / min', 'gal/min'],
    ['c', 'C'],
  ])('%j is %s', (text, token) => {
    expect(findUnit(text)?.token).toBe(token);
  });

  test.each(['', ' ', 'gallon', 'cups', 'imp', 'floz', 'gal.', 'oz/gal', 'constructor', '__proto__', 'm³'])(
    '%j is not guessed',
    (text) => {
      expect(findUnit(text)).toBeUndefined();
    },
  );

  test('every token of the contract is known, and no other', () => {
    expect(knownUnits('volume')).toEqual(
      [
        'mL',
        'L',
        'tsp',
        'tbsp',
        'fl oz',
        'cup',
        'pt',
        'qt',
        'gal',
        'imp fl oz',
        'imp pt',
        'imp qt',
        'imp gal',
      ].concat(['m3', 'ft3']),
    );
    expect(knownUnits('mass')).toEqual(['mg', 'g', 'kg', 'oz', 'lb']);
    expect(knownUnits('flow')).toEqual(['L/min', 'L/h', 'mL/s', 'gal/min', 'gal/h', 'imp gal/min']);
    expect(knownUnits('length')).toEqual(['mm', 'cm', 'm', 'in', 'ft', 'yd']);
    expect(knownUnits('temperature')).toEqual(['C', 'F']);
  });

  test('two families do not convert', () => {
    expect(() => convert(1, findUnit('gal')!, findUnit('lb')!)).toThrow(RangeError);
  });
});

describe('rate units are a measure, a slash, an optional count and a volume', () => {
  test.each([
    ['tbsp/gal', 'tbsp/gal'],
    ['OZ / 100 GAL', 'oz/100 gal'],
    ['lb/1000gal', 'lb/1000 gal'],
    ['fl oz/1 gal', 'fl oz/gal'],
    ['g/2.5 L', 'g/2.5 L'],
    ['imp fl oz/100 imp gal', 'imp fl oz/100 imp gal'],
  ])('%j is %s', (text, token) => {
    expect(findRateUnit(text)?.token).toBe(token);
  });

  test.each([
    '',
    '/',
    'tbsp',
    '/gal',
    'tbsp/',
    'tbsp/0 gal',
    'gal/min',
    'tbsp/lb',
    'ft/gal',
    'g/-1 L',
    'g/L/L',
    '2 g/L',
  ])('%j is not guessed', (text) => {
    expect(findRateUnit(text)).toBeUndefined();
  });

  test('a label’s 8 oz/100 gal and 2.4 tsp/gal tell their strengths', () => {
    const byMass = toRate(8, findRateUnit('oz/100 gal')!);
    expect(fromRate(byMass, findRateUnit('oz/gal')!)).toBeCloseTo(0.08, 14);
    expect(fromRate(byMass, findRateUnit('tbsp/gal')!)).toBeUndefined();
    const byVolume = toRate(2.4, findRateUnit('tsp/gal')!);
    expect(fromRate(byVolume, findRateUnit('tbsp/gal')!)).toBeCloseTo(0.8, 14);
  });
});

describe('mass and volume meet only by a density', () => {
  const pint = toAmount(1, findUnit('pt')!);

  test('without one there is no answer', () => {
    expect(massOf(pint)).toBeUndefined();
    expect(amountIn(pint, findUnit('oz')!)).toBeUndefined();
    expect(volumeOf(ofMass(grams(1)))).toBeUndefined();
    expect(shareOf(ofMass(grams(1)), pint)).toBeUndefined();
  });

  test('a pint of a 0.78 g/mL granule weighs 13 oz', () => {
    // LSU AgCenter, Tons to Teaspoons: granular ammonium nitrate, about 13 oz a pint.
    expect(amountIn(pint, findUnit('oz')!, density(0.78))).toBeCloseTo(13, 1);
  });

  test('unlike amounts are not added', () => {
    expect(() => addAmounts(ofMass(grams(1)), ofVolume(litres(1)))).toThrow(RangeError);
    expect(() => addAmounts(ofVolume(litres(1)), ofMass(grams(1)))).toThrow(RangeError);
    expect(() => toAmount(1, findUnit('ft')!)).toThrow(RangeError);
    expect(() => amountIn(pint, findUnit('gal/min')!)).toThrow(RangeError);
  });
});
