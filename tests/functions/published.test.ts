import { describe, expect, test } from 'vitest';
import type { RawArgument } from '../../functions';
import { call } from '../../functions';

const valueOf = (name: string, ...args: RawArgument[]): number => {
  const outcome = call(name, args);
  if (!('value' in outcome)) throw new Error(outcome.sentence ?? outcome.error);
  return outcome.value as number;
};

const offBy = (found: number, published: number): number => Math.abs(found / published - 1);

// Tables are built on 13½ oz per 100 gal for 200 ppm from 20 %: 74.07 mg/L for each ounce, where exact units have
// 74.89. So their figures stand up to 1.5 % from ours.
const TABLE = 0.015;

describe('DILUTE', () => {
  // Arizona Department of Agriculture, Weights and Measures (azdwm.gov): 1 gal = 128 fl oz.
  // fourmilab.ch, The Hacker's Diet, units: 1 gal = 256 tbsp = 768 tsp.
  test.each([
    ['fl oz/gal', 128],
    ['tbsp/gal', 256],
    ['tsp/gal', 768],
  ])('1 %s in %d gal is one gallon of product', (rate, gallons) => {
    expect(valueOf('DILUTE', 1, rate, gallons, 'gal', 'gal')).toBeCloseTo(1, 12);
  });

  test('18 oz/gal in a 5 gal stock tank is 90 oz, 5 lb 10 oz', () => {
    // Trade source, name withheld.
    const ounces = valueOf('DILUTE', 18, 'oz/gal', 5, 'gal', 'oz');
    expect(ounces).toBeCloseTo(90, 10);
    expect(call('MEASURE', [ounces, 'oz'])).toEqual({ value: '5 lb 10 oz' });
  });

  test('13.5 oz/gal in a 12 gal stock tank is 162 oz', () => {
    // Trade source, name withheld.
    expect(valueOf('DILUTE', 13.5, 'oz/gal', 12, 'gal', 'oz')).toBeCloseTo(162, 10);
  });
});

describe('FORPPM', () => {
  // UMass Extension, Fertilizer Calculations for Greenhouse Crops: ounces for 100 gal.
  test.each([
    [200, 20, 13.5],
    [200, 15, 18],
  ])('%d ppm from %d %% is %d oz in 100 gal', (ppm, percent, ounces) => {
    expect(offBy(valueOf('FORPPM', ppm, percent, 100, 'gal', 'oz'), ounces)).toBeLessThan(TABLE);
  });

  // greenhouse educator's page, ghadvisor.blogspot.com, October 2008: 2.67 ÷ 0.33, printed to three figures.
  test('200 ppm from 33 % is 8.09 oz in 100 gal', () => {
    expect(offBy(valueOf('FORPPM', 200, 33, 100, 'gal', 'oz'), 8.09)).toBeLessThan(0.0007);
  });

  // Michigan State University Extension, Ensuring proper fertilizer concentration in greenhouse growing, Table 1:
  // ounces for a gallon of concentrate. The table does not print the analysis; its ounces imply 20 % N.
  test.each([
    [50, 15, 0.5],
    [50, 100, 3.38],
    [50, 200, 6.75],
    [100, 15, 1.0],
    [100, 100, 6.75],
    [100, 200, 13.5],
    [200, 15, 2.0],
    [200, 200, 27.0],
  ])('%d ppm through 1:%d is %d oz for each gallon of concentrate', (ppm, parts, ounces) => {
    const concentrate = valueOf('STOCK', parts, 1000, 'gal');
    const product = valueOf('FORPPM', ppm, 20, 1000, 'gal', 'oz');
    expect(offBy(product / concentrate, ounces)).toBeLessThan(TABLE);
  });
});

describe('PPM', () => {
  test('1 oz of a 15 % product in 100 gal is 11.25 ppm', () => {
    // Texas A&M, hortipm.tamu.edu/ipmguide/nutrient/calcs.html.
    expect(offBy(valueOf('PPM', 1, 'oz', 15, 100, 'gal'), 11.25)).toBeLessThan(TABLE);
  });

  test('concentrate for 200 ppm through 1:100 holds 20,000 ppm', () => {
    // Cornell University (N. Mattson), Fertilizer Calculations and Practice Questions.
    const product = valueOf('FORPPM', 200, 20, 100, 'gal', 'oz');
    const concentrate = valueOf('STOCK', 100, 100, 'gal');
    expect(valueOf('PPM', product, 'oz', 20, concentrate, 'gal')).toBeCloseTo(20000, 6);
  });
});

describe('STOCK', () => {
  test('1 gal through 1:100 makes 100 gal finished', () => {
    // UMass Extension, Fertilizer Calculations for Greenhouse Crops.
    expect(valueOf('STOCK', 100, 100, 'gal')).toBe(1);
  });

  test('and needs 99 gal of water', () => {
    // Cornell University (N. Mattson), Fertilizer Calculations and Practice Questions.
    expect(100 - valueOf('STOCK', 100, 100, 'gal', 'in')).toBe(99);
  });

  // negreenhouseupdate.info: 1 % is 1:100, 2 % is 1:50, 0.5 % is 1:200.
  test.each([
    [100, 1],
    [50, 2],
    [200, 0.5],
  ])('1:%d is %d %% of the finished solution', (parts, percent) => {
    expect(valueOf('STOCK', parts, 100, 'gal')).toBe(percent);
  });

  test('1 gal added to 100 gal of water makes 101 gal', () => {
    // Trade source, name withheld.
    expect(valueOf('STOCK', 100, 101, 'gal', 'plus')).toBe(1);
  });
});

describe('ELEMENT', () => {
  // Virginia Tech, Conversion Factors Needed for Common Fertilizer Calculations, SPES-201NP: to 0.05 %.
  test.each([
    ['P2O5', 'P', 0.4365],
    ['P', 'P2O5', 2.291],
    ['K2O', 'K', 0.8301],
    ['K', 'K2O', 1.2051],
    ['CaO', 'Ca', 0.7147],
    ['Ca', 'CaO', 1.3992],
    ['MgO', 'Mg', 0.6032],
    ['Mg', 'MgO', 1.6578],
  ])('%s to %s is %d', (from, to, factor) => {
    expect(offBy(valueOf('ELEMENT', 1, from, to), factor)).toBeLessThan(0.0005);
  });

  // International Fertilizer Industry Association's factors, fertilizer.sgs.com/conversion-tables.htm: to 0.01 %.
  test.each([
    ['P2O5', 'P', 0.4364],
    ['P', 'P2O5', 2.2914],
    ['K2O', 'K', 0.8302],
    ['K', 'K2O', 1.2046],
  ])('%s to %s is %d', (from, to, factor) => {
    expect(offBy(valueOf('ELEMENT', 1, from, to), factor)).toBeLessThan(0.0001);
  });

  test('49.8 % K is 60 % K2O', () => {
    // Virginia Tech, SPES-201NP, worked row.
    expect(offBy(valueOf('ELEMENT', 49.8, 'K', 'K2O'), 60)).toBeLessThan(0.0005);
  });
});

describe('WEIGHT', () => {
  test('a litre of water at 20 °C weighs 0.99823 kg', () => {
    // International Critical Tables (1928–29); 998.2 kg/m³ is the newer table's, to four figures.
    expect(offBy(valueOf('WEIGHT', 1, 'L', 'kg'), 0.99823)).toBeLessThan(0.0001);
  });

  test('a gallon weighs between 8.338 lb (60 °F) and 8.329 lb (70 °F)', () => {
    // engineeringtoolbox.com, d_595; 20 °C is 68 °F.
    const pounds = valueOf('WEIGHT', 1, 'gal', 'lb');
    expect(pounds).toBeLessThan(8.338);
    expect(pounds).toBeGreaterThan(8.329);
  });
});

describe('BARREL', () => {
  // Native Tree Society, nativetreesociety.org/measure/volume/frustrum1.htm: height, two diameters, volume.
  test.each([
    [4.5, 4.8, 4.1, 70.13213],
    [4.5, 4.1, 3.9, 56.56045],
    [11, 3.9, 3.2, 109.2306],
  ])('%d high, %d and %d wide holds %d', (depth, bottom, surface, volume) => {
    const cubicFeet = valueOf('BARREL', depth, bottom, 'ft', 'ft3', surface);
    expect(offBy(cubicFeet, volume)).toBeLessThan(1e-6);
    expect(valueOf('BARREL', depth, surface, 'ft', 'ft3', bottom)).toBeCloseTo(cubicFeet, 9);
  });
});

describe('REPEATS', () => {
  const readings: RawArgument = [[24.1], [24.6], [23.9]];
  const spread = valueOf('FLOWSPREAD', readings);

  // Riley, Hobson and Bence, Mathematical Methods, Table 31.3: two-sided 95 % t by degrees of freedom, three figures.
  test.each([
    [3, 4.3],
    [4, 3.18],
    [5, 2.78],
    [6, 2.57],
    [7, 2.45],
    [8, 2.37],
    [9, 2.31],
    [10, 2.26],
  ])('%d timed buckets reach what t = %d allows, and no less', (n, t) => {
    const reach = (t * spread) / Math.sqrt(n);
    // Half a unit of the last figure, and a little more: the table has 2.37 where the exact t is 2.3646.
    const printed = 0.0055 / t;
    expect(valueOf('REPEATS', readings, reach * (1 + printed))).toBe(n);
    expect(valueOf('REPEATS', readings, reach * (1 - printed))).toBe(n + 1);
  });

  test('24.1, 24.6 and 23.9 s spread by 1.49 %', () => {
    expect(offBy(spread, 1.49)).toBeLessThan(0.005 / 1.49); // computed
  });
});
