import { expect, test } from 'vitest';
import { findUnit, measure } from '../../../addin/core';
import { suitingStep } from '../../../addin/core';

const unit = (token: string) => findUnit(token)!;

test.each([
  [2, 'tsp', 0.25],
  [1, 'cup', 0.25],
  [2, 'cup', 1],
  [4, 'cup', 3],
  [49, 'mL', 1],
  [250, 'mL', 5],
  [2, 'L', 25],
  [13.5, 'oz', 0.25],
  [4, 'lb', 1],
  [600, 'g', 10],
  [24, 'imp fl oz', 0.25],
  [25, 'imp fl oz', 0.5],
  [2.5, 'imp pt', 1],
  [1, 'imp gal', 1],
])('%d %s is measured in steps of %d', (amount, token, step) => {
  expect(suitingStep(amount, unit(token))).toBe(step);
});

test('a coarser step than the finest costs at most 1 %', () => {
  for (const token of ['tsp', 'cup', 'mL', 'L', 'oz', 'lb', 'g', 'imp fl oz']) {
    for (let amount = 0.1; amount < 3000; amount *= 1.07) {
      const step = suitingStep(amount, unit(token));
      const finest = measure(amount, unit(token));
      const told = measure(amount, unit(token), step);
      if (told === undefined || told.words === finest?.words) continue;
      expect(Math.abs(told.error), `${amount} ${token}`).toBeLessThanOrEqual(0.01 + 1e-9);
    }
  }
});
