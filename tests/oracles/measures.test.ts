import { describe, expect, test } from 'vitest';
import { convert, findRateUnit, findUnit, toRate } from '../../addin/core';
import { asPrinted, expectWithin } from './within';

const unit = (token: string) => findUnit(token)!;

const NIST = 'NIST Handbook 44 (2012), Appendix C, General Tables of Units of Measurement';
const DEFINITIONS = `${NIST}; definition read in the unit file of pint, default_en.txt`;
const ARIZONA = 'Arizona Weights and Measures, azdwm.gov';
const FOURMILAB = 'fourmilab.ch, hackdiet, e4/units.html';

describe('US and imperial measures are their legal definitions', () => {
  test.each([
    { one: 'gal', other: 'fl oz', published: 128, source: ARIZONA },
    { one: 'gal', other: 'tsp', published: 768, source: FOURMILAB },
    { one: 'gal', other: 'tbsp', published: 256, source: FOURMILAB },
    { one: 'cup', other: 'tbsp', published: 16, source: DEFINITIONS },
    { one: 'gal', other: 'cup', published: 16, source: DEFINITIONS },
    { one: 'gal', other: 'pt', published: 8, source: DEFINITIONS },
    { one: 'gal', other: 'qt', published: 4, source: DEFINITIONS },
    { one: 'fl oz', other: 'tsp', published: 6, source: DEFINITIONS },
    { one: 'fl oz', other: 'tbsp', published: 2, source: DEFINITIONS },
    { one: 'imp gal', other: 'imp fl oz', published: 160, source: DEFINITIONS },
    { one: 'imp pt', other: 'imp fl oz', published: 20, source: DEFINITIONS },
    { one: 'lb', other: 'oz', published: 16, source: DEFINITIONS },
    { one: 'ft', other: 'in', published: 12, source: DEFINITIONS },
    { one: 'yd', other: 'ft', published: 3, source: DEFINITIONS },
  ])('1 $one is $published $other', ({ one, other, published }) => {
    expect(convert(1, unit(one), unit(other))).toBe(published);
    expect(convert(published, unit(other), unit(one))).toBe(1);
  });

  // Exact by definition; the tolerance is that of a double.
  test.each([
    { one: 'gal', other: 'L', published: 3.785411784, source: DEFINITIONS },
    { one: 'qt', other: 'mL', published: 946.352946, source: DEFINITIONS },
    { one: 'pt', other: 'mL', published: 473.176473, source: DEFINITIONS },
    { one: 'cup', other: 'mL', published: 236.5882365, source: DEFINITIONS },
    { one: 'fl oz', other: 'mL', published: 29.5735295625, source: DEFINITIONS },
    { one: 'tbsp', other: 'mL', published: 14.78676478125, source: DEFINITIONS },
    { one: 'tsp', other: 'mL', published: 4.92892159375, source: DEFINITIONS },
    { one: 'imp gal', other: 'L', published: 4.54609, source: DEFINITIONS },
    { one: 'imp fl oz', other: 'mL', published: 28.4130625, source: DEFINITIONS },
    { one: 'lb', other: 'g', published: 453.59237, source: DEFINITIONS },
    { one: 'oz', other: 'g', published: 28.349523125, source: DEFINITIONS },
    { one: 'in', other: 'mm', published: 25.4, source: DEFINITIONS },
    { one: 'ft', other: 'm', published: 0.3048, source: DEFINITIONS },
    { one: 'yd', other: 'm', published: 0.9144, source: DEFINITIONS },
  ])('1 $one is $published $other', ({ one, other, published }) => {
    expectWithin(convert(1, unit(one), unit(other)), published, 1e-14);
  });

  // NIST SP 811, Appendix B, six-figure forms: from memory, source not read.
  test.each([
    { one: 'gal', other: 'm3', figure: '0.003785412' },
    { one: 'fl oz', other: 'm3', figure: '0.00002957353' },
  ])('1 $one is $figure $other (from memory)', ({ one, other, figure }) => {
    expectWithin(convert(1, unit(one), unit(other)), Number(figure), asPrinted(figure));
  });

  test('a cubic foot is 7.48052 gallons', () => {
    // Factor as barrel tables print it; computed from the definitions.
    expectWithin(convert(1, unit('ft3'), unit('gal')), 7.48052, asPrinted('7.48052'));
  });

  test('the imperial gallon is not the US one', () => {
    // Computed from the two definitions.
    expectWithin(convert(1, unit('imp gal'), unit('gal')), 1.200949925504855, 1e-14);
    expectWithin(convert(55, unit('imp gal'), unit('L')), 250.03495, 1e-14);
  });
});

describe('rates', () => {
  test.each([
    { rate: 'lb/gal', gramsPerLitre: 119.826427316897 },
    { rate: 'oz/gal', gramsPerLitre: 7.489151707306 },
    { rate: 'oz/100 gal', gramsPerLitre: 0.0748915170730604 },
    { rate: 'lb/100 gal', gramsPerLitre: 1.19826427316897 },
    { rate: 'oz/100 imp gal', gramsPerLitre: 0.06236023291444 },
  ])('1 $rate is $gramsPerLitre g/L (computed from the definitions)', ({ rate, gramsPerLitre }) => {
    const given = toRate(1, findRateUnit(rate)!);
    expect(given.kind).toBe('mass');
    expectWithin(given.kind === 'mass' ? given.mass : undefined, gramsPerLitre, 1e-12);
  });
});

describe('temperature', () => {
  // Exact: °C = (°F − 32) × 5/9; the fixed points and the one crossing are common knowledge.
  test.each([
    [32, 0],
    [212, 100],
    [-40, -40],
    [68, 20],
  ])('%d °F is %d °C', (fahrenheit, celsius) => {
    expect(convert(fahrenheit, unit('F'), unit('C'))).toBeCloseTo(celsius, 12);
    expect(convert(celsius, unit('C'), unit('F'))).toBeCloseTo(fahrenheit, 12);
  });
});
