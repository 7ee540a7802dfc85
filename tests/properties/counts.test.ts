import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  cost,
  countFor,
  doseFrom,
  grams,
  leastWater,
  litres,
  litresPerMinute,
  meanFlow,
  need,
  ofMass,
  repeatsNeeded,
  seconds,
  secondsFor,
  serves,
  spread,
  unitCost,
} from '../../addin/core';

const positive = fc.double({ min: 1e-3, max: 1e3, noNaN: true });
const step = fc.oneof(fc.constantFrom(0.5, 1, 2, 5), fc.double({ min: 0.1, max: 30, noNaN: true }));
const readings = fc.array(fc.double({ min: 1, max: 300, noNaN: true }), { minLength: 2, maxLength: 12 });

describe('counts', () => {
  test('a count is a multiple of the step, never 0, and within half a step unless raised from 0', () => {
    fc.assert(
      fc.property(positive, positive, step, (dose, flow, kept) => {
        const exact = secondsFor(litres(dose), litresPerMinute(flow));
        const count = countFor(litres(dose), litresPerMinute(flow), seconds(kept));
        expect(count).toBeGreaterThan(0);
        expect(Math.abs(count / kept - Math.round(count / kept))).toBeLessThanOrEqual(1e-9 * (count / kept));
        if (exact >= kept / 2)
          expect(Math.abs(count - exact)).toBeLessThanOrEqual((kept / 2) * (1 + 1e-8) + 1e-12 * exact);
        else expect(count).toBe(kept);
      }),
      { numRuns: 2000 },
    );
  });

  test('what the exact seconds give is the dose', () => {
    fc.assert(
      fc.property(positive, positive, (dose, flow) => {
        const given = doseFrom(secondsFor(litres(dose), litresPerMinute(flow)), litresPerMinute(flow));
        expect(Math.abs(given - dose)).toBeLessThanOrEqual(1e-12 * dose);
      }),
    );
  });

  test('a volume serves the plants that need it, and not one more', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 5000 }), positive, (plants, dose) => {
        const volume = need([plants], [litres(dose)]);
        expect(serves(volume, litres(dose))).toBe(plants);
        expect(serves(litres(volume * (1 - 1e-6)), litres(dose))).toBe(plants - 1);
      }),
    );
  });

  test('the need is the same however the plants are grouped', () => {
    const groups = fc.array(fc.tuple(fc.integer({ min: 0, max: 100 }), positive), { maxLength: 20 });
    fc.assert(
      fc.property(groups, (rows) => {
        const whole = need(
          rows.map(([plants]) => plants),
          rows.map(([, dose]) => litres(dose)),
        );
        const one = rows
          .map(([plants, dose]) => need([plants], [litres(dose)]))
          .reduce((total, n) => total + n, 0);
        expect(Math.abs(whole - one)).toBeLessThanOrEqual(1e-12 * one);
      }),
    );
  });
});

describe('timed buckets', () => {
  test('twice the flow halves every reading and leaves the spread', () => {
    fc.assert(
      fc.property(positive, readings, (volume, times) => {
        const slow = times.map(seconds);
        const fast = times.map((time) => seconds(time / 2));
        expect(meanFlow(litres(volume), fast)).toBe(2 * meanFlow(litres(volume), slow));
        expect(spread(fast)).toBe(spread(slow));
      }),
    );
  });

  test('equal readings have no spread, and three are enough', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 1e4, noNaN: true }),
        fc.integer({ min: 2, max: 9 }),
        (time, times) => {
          const same = Array<number>(times).fill(time).map(seconds);
          expect(spread(same)).toBe(0);
          expect(repeatsNeeded(same, 1e-6)).toBe(3);
        },
      ),
    );
  });

  test('a wider margin never needs more repeats', () => {
    fc.assert(
      fc.property(readings, fc.double({ min: 0.01, max: 0.5, noNaN: true }), (times, share) => {
        const tight = repeatsNeeded(times.map(seconds), share) ?? 201;
        const wide = repeatsNeeded(times.map(seconds), share * 1.5) ?? 201;
        expect(wide).toBeLessThanOrEqual(tight);
      }),
      { numRuns: 30 },
    );
  });
});

describe('premix and cost', () => {
  test('the least water holds the powder at the margin exactly', () => {
    const share = fc.double({ min: 0.1, max: 1, noNaN: true });
    fc.assert(
      fc.property(positive, positive, share, (mass, solubility, margin) => {
        const water = leastWater(grams(mass), solubility, margin);
        expect(Math.abs((water * solubility * margin) / mass - 1)).toBeLessThanOrEqual(1e-12);
      }),
    );
  });

  test('the whole pack costs its price, by any measure', () => {
    fc.assert(
      fc.property(positive, positive, positive, (price, pack, per) => {
        expect(cost(ofMass(grams(pack)), price, ofMass(grams(pack)))).toBe(price);
        const each = unitCost(price, ofMass(grams(pack)), ofMass(grams(per)))!;
        expect(Math.abs((each * pack) / per / price - 1)).toBeLessThanOrEqual(1e-12);
      }),
    );
  });
});
