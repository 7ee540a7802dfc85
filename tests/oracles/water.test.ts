import { describe, expect, test } from 'vitest';
import {
  amountIn,
  density,
  filledWeight,
  findUnit,
  grams,
  litres,
  ofMass,
  toAmount,
  toCanonical,
  waterMass,
} from '../../addin/core';
import { asPrinted, expectWithin } from './within';

const pound = findUnit('lb')!;
const gallon = findUnit('gal')!;
const pounds = (gallons: number) => amountIn(ofMass(waterMass(litres(toCanonical(gallons, gallon)))), pound);

describe('pounds of water in a US gallon', () => {
  // mathforum.org, which gives the density each figure rests on and uses exact units.
  test.each([
    { gramsPerMillilitre: 0.9979955, figure: '8.328676' },
    { gramsPerMillilitre: 0.9991026, figure: '8.337915' },
    { gramsPerMillilitre: 0.9956502, figure: '8.309104' },
  ])('$gramsPerMillilitre g/mL is $figure lb/gal', ({ gramsPerMillilitre, figure }) => {
    const mass = amountIn(toAmount(1, gallon), pound, density(gramsPerMillilitre));
    expectWithin(mass, Number(figure), asPrinted(figure));
  });

  // Computed at 60 °F, 8.3378 lb/gal, for barrels in use.
  test.each([
    { gal: 30, figure: '250.1' },
    { gal: 32, figure: '266.8' },
    { gal: 50, figure: '416.9' },
    { gal: 55, figure: '458.6' },
    { gal: 60, figure: '500.3' },
  ])('$gal gal at 60 °F weigh $figure lb (computed), at 20 °C 0.1 % less', ({ gal, figure }) => {
    const cool = density((8.3378 * 453.59237) / 3785.411784);
    expectWithin(amountIn(toAmount(gal, gallon), pound, cool), Number(figure), asPrinted(figure));
    expectWithin(pounds(gal), Number(figure), 0.0012);
  });

  test('at 20 °C it lies between the printed 60 °F and 70 °F', () => {
    // engineeringtoolbox.com, d_595: 8.338 lb/gal at 60 °F, 8.329 at 70 °F; 68 °F between them by proportion.
    expectWithin(pounds(1), 8.338 - (8.338 - 8.329) * 0.8, 1e-4);
  });

  test('our water is the older table’s to its fourth figure', () => {
    // International Critical Tables (1928–29): 0.99823 g/mL at 20 °C, against 998.2 kg/m³ used here.
    expectWithin(waterMass(litres(1)), 998.23, 5e-5);
  });

  test('60 gal weigh 499.8 lb at 20 °C', () => {
    expectWithin(pounds(60), 499.8, asPrinted('499.8')); // computed
  });

  test('the barrel itself is added', () => {
    const water = litres(toCanonical(60, gallon));
    expect(filledWeight(water, grams(20 * 453.59237)) - filledWeight(water)).toBeCloseTo(20 * 453.59237, 6);
  });
});
