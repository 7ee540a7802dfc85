import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { convert, findUnit, knownUnits } from '../../addin/core';
import { REFERENCE_NAMES, referenceConvert } from './referenceUnits';

const FAMILIES = ['volume', 'mass', 'flow', 'length', 'temperature'] as const;
const tokens = FAMILIES.flatMap((family) => knownUnits(family).map((token) => ({ family, token })));
const pairs = tokens.flatMap(({ family, token }) =>
  tokens.filter((other) => other.family === family).map((other) => ({ from: token, to: other.token })),
);

describe('conversions agree with a general units library', () => {
  test('every unit is compared', () => {
    expect(tokens.map(({ token }) => token).sort()).toEqual(Object.keys(REFERENCE_NAMES).sort());
  });

  test.each(pairs)('$from to $to', ({ from, to }) => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 1e6, noNaN: true }), (value) => {
        const theirs = referenceConvert(value, from, to);
        const ours = convert(value, findUnit(from)!, findUnit(to)!);
        // Absolute below 1 for temperatures, which pass 0.
        expect(Math.abs(ours - theirs)).toBeLessThanOrEqual(
          1e-12 * Math.max(Math.abs(theirs), from === to ? 0 : 1e-9),
        );
      }),
      { numRuns: 50 },
    );
  });
});
