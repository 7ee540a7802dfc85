import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  barrelVolume,
  fewestFills,
  fillPlan,
  fillTime,
  filledWeight,
  grams,
  litres,
  litresPerMinute,
  metres,
  waterMass,
  workingVolume,
} from '../../addin/core';

const volume = fc.double({ min: 0.5, max: 2000, noNaN: true });
const rig = fc
  .record({
    barrel: volume,
    fillLine: fc.double({ min: 0.2, max: 1, noNaN: true }),
    heelShare: fc.double({ min: 0, max: 0.9, noNaN: true }),
    barrels: fc.oneof(fc.integer({ min: 1, max: 40 }), fc.double({ min: 1e-3, max: 40, noNaN: true })),
    style: fc.constantFrom('full' as const, 'equal' as const),
  })
  .map(({ barrel, fillLine, heelShare, barrels, style }) => {
    const heel = litres(barrel * fillLine * heelShare);
    const working = workingVolume(litres(barrel), heel, fillLine);
    return { barrel: litres(barrel), fillLine, heel, working, need: litres(working * barrels), style };
  });

const sum = (numbers: readonly number[]) => numbers.reduce((total, n) => total + n, 0);

describe('fills', () => {
  test('what is pumped out sums to the need, what is made up to need and heel', () => {
    fc.assert(
      fc.property(rig, ({ need, barrel, heel, fillLine, style }) => {
        const fills = fillPlan(need, barrel, heel, fillLine, style);
        expect(sum(fills.map((fill) => fill.pumpedOut))).toBe(need);
        expect(sum(fills.map((fill) => fill.makeUp))).toBe(need + heel);
      }),
      { numRuns: 2000 },
    );
  });

  test('no fill passes the fill line, and the pump never lifts the heel', () => {
    fc.assert(
      fc.property(rig, ({ need, barrel, heel, fillLine, style }) => {
        let inBarrel = 0;
        const noise = 2e-9 * barrel;
        for (const { makeUp, pumpedOut } of fillPlan(need, barrel, heel, fillLine, style)) {
          expect(makeUp).toBeGreaterThan(0);
          expect(pumpedOut).toBeGreaterThan(0);
          inBarrel += makeUp;
          expect(inBarrel).toBeLessThanOrEqual(barrel * fillLine + noise);
          inBarrel -= pumpedOut;
          expect(Math.abs(inBarrel - heel)).toBeLessThanOrEqual(noise);
        }
      }),
      { numRuns: 2000 },
    );
  });

  test('there are as few as can be, numbered from 1', () => {
    fc.assert(
      fc.property(rig, ({ need, barrel, heel, fillLine, style, working }) => {
        const fills = fillPlan(need, barrel, heel, fillLine, style);
        expect(fills.length).toBe(fewestFills(need, working));
        expect(fills.map((fill) => fill.number)).toEqual(fills.map((_, place) => place + 1));
        expect((fills.length - 1) * working).toBeLessThan(need);
      }),
      { numRuns: 500 },
    );
  });

  test('full ones come first and the last is no larger; equal ones are equal', () => {
    fc.assert(
      fc.property(rig, ({ need, barrel, heel, fillLine, style, working }) => {
        const fills = fillPlan(need, barrel, heel, fillLine, style);
        const last = fills.at(-1)!.pumpedOut;
        for (const { pumpedOut } of fills.slice(0, -1)) {
          if (style === 'full') expect(pumpedOut).toBe(working);
          expect(last).toBeLessThanOrEqual(pumpedOut * (1 + 1e-8));
          if (style === 'equal') expect(Math.abs(last - pumpedOut)).toBeLessThanOrEqual(1e-9 * need);
        }
      }),
      { numRuns: 500 },
    );
  });

  test('a need that is whole barrels but for the noise of units takes no extra fill', () => {
    fc.assert(
      fc.property(volume, fc.integer({ min: 1, max: 200 }), (barrel, barrels) => {
        const gallon = 3.785411784;
        const need = litres(barrel * barrels * gallon);
        expect(fewestFills(need, litres(barrel * gallon))).toBe(barrels);
        expect(
          fewestFills(
            litres(sum(Array<number>(barrels * 7).fill((barrel * gallon) / 7))),
            litres(barrel * gallon),
          ),
        ).toBe(barrels);
      }),
    );
  });
});

describe('volume, weight and time', () => {
  test('a barrel fills by parts: a cut across a taper changes nothing', () => {
    const width = fc.double({ min: 0.1, max: 2, noNaN: true });
    fc.assert(
      fc.property(
        width,
        width,
        fc.double({ min: 0.01, max: 2, noNaN: true }),
        fc.double({ min: 0.05, max: 0.95, noNaN: true }),
        (bottom, top, depth, cut) => {
          const between = metres(bottom + (top - bottom) * cut);
          const below = barrelVolume(metres(depth * cut), metres(bottom), between);
          const above = barrelVolume(metres(depth * (1 - cut)), between, metres(top));
          const whole = barrelVolume(metres(depth), metres(bottom), metres(top));
          expect(Math.abs(below + above - whole)).toBeLessThanOrEqual(1e-12 * whole);
        },
      ),
    );
  });

  test('twice the water weighs twice as much, the barrel once', () => {
    fc.assert(
      fc.property(volume, volume, (water, empty) => {
        const once = filledWeight(litres(water), grams(empty)) - empty;
        const twice = filledWeight(litres(2 * water), grams(empty)) - empty;
        expect(Math.abs(twice - 2 * once)).toBeLessThanOrEqual(1e-9 * twice);
        expect(waterMass(litres(water))).toBeLessThan(water * 1000);
      }),
    );
  });

  test('time × flow is the volume', () => {
    fc.assert(
      fc.property(volume, volume, (size, flow) => {
        const minutes = fillTime(litres(size), litresPerMinute(flow)) / 60;
        expect(Math.abs(minutes * flow - size)).toBeLessThanOrEqual(1e-12 * size);
      }),
    );
  });
});
