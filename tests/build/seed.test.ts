import fc from 'fast-check';
import { expect, test } from 'vitest';

test('random inputs begin with the number that the run prints', () => {
  const seed = Number(process.env.WANDCOUNT_SEED);
  const given = fc.sample(fc.integer(), { numRuns: 5, seed });
  expect(fc.sample(fc.integer(), 5)).toEqual(given);
  expect(fc.sample(fc.integer(), { numRuns: 5, seed: seed + 1 })).not.toEqual(given);
});
