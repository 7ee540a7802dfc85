import { expect, test } from 'vitest';
import {
  amountIn,
  fewestFills,
  findRateUnit,
  findUnit,
  litres,
  measure,
  productFor,
  toCanonical,
  toRate,
  workingVolume,
} from '../../addin/core';
import { expectWithin } from './within';

// Common practice among growers, no published source.
const gallons = (n: number) => litres(toCanonical(n, findUnit('gal')!));

test('1 tbsp/gal in a 60 gal barrel is 3 3/4 cups', () => {
  const product = productFor(toRate(1, findRateUnit('tbsp/gal')!), gallons(60));
  const cups = amountIn(product, findUnit('cup')!)!;
  expectWithin(cups, 3.75, 1e-12);
  expect(measure(cups, findUnit('cup')!)?.words).toBe('3 3/4 cups');
  // At a label's greatest rate nobody is told the growers' round 4 cups.
  expect(measure(cups, findUnit('cup')!, 48, 'down')?.words).toBe('3 cups');
});

test('240 gal are four fills of a 60 gal barrel, a gallon more is five', () => {
  const working = workingVolume(gallons(60), litres(0), 1);
  expect(fewestFills(gallons(240), working)).toBe(4);
  expect(fewestFills(gallons(241), working)).toBe(5);
});
