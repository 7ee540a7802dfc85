import { describe, expect, test } from 'vitest';
import {
  findUnit,
  fromCanonical,
  litres,
  meanFlow,
  repeatsNeeded,
  seconds,
  spread,
  toCanonical,
} from '../../addin/core';
import { chanceWithin, studentT } from '../../addin/core/flow/studentT';
import { asPrinted, expectWithin } from './within';

const times = (...readings: number[]) => readings.map(seconds);
/** Three readings with exactly this coefficient of variation. */
const varied = (variation: number) => times(1 - variation, 1, 1 + variation);

describe('Student’s t, two-sided 95 %', () => {
  // Riley, Hobson and Bence, Mathematical Methods for Physics and Engineering, Table 31.3 (three figures).
  test.each([
    { freedom: 1, figure: '12.7' },
    { freedom: 2, figure: '4.30' },
    { freedom: 3, figure: '3.18' },
    { freedom: 4, figure: '2.78' },
    { freedom: 5, figure: '2.57' },
    { freedom: 6, figure: '2.45' },
    { freedom: 7, figure: '2.37' },
    { freedom: 8, figure: '2.31' },
    { freedom: 9, figure: '2.26' },
    { freedom: 10, figure: '2.23' },
    { freedom: 1_000_000, figure: '1.96' },
  ])('$freedom degrees of freedom: $figure', ({ freedom, figure }) => {
    // 7 degrees: 2.3646, printed 2.37; one in the last figure is allowed there.
    const tolerance = asPrinted(figure) * (freedom === 7 ? 2 : 1);
    expectWithin(studentT(0.95, freedom), Number(figure), tolerance);
  });

  // The same chance by Simpson's rule over the density, with no closed form in it.
  test.each([1, 2, 3, 4, 7, 10, 30, 199])(
    'the chance agrees with the area under the curve, %d degrees',
    (freedom) => {
      const density = (x: number) => (1 + (x * x) / freedom) ** (-(freedom + 1) / 2);
      const area = (to: number, steps: number) => {
        const h = to / steps;
        let total = density(0) + density(to);
        for (let i = 1; i < steps; i++) total += (i % 2 === 1 ? 4 : 2) * density(i * h);
        return (total * h) / 3;
      };
      // Over the whole line by x = tan u, which also serves the heavy tail of few degrees.
      const whole = () => {
        const steps = 200_000;
        const h = Math.PI / 2 / steps;
        let total = density(0);
        for (let i = 1; i < steps; i++) {
          const u = i * h;
          total += ((i % 2 === 1 ? 4 : 2) * density(Math.tan(u))) / Math.cos(u) ** 2;
        }
        // At the far end the integrand tends to 1 for one degree of freedom and to 0 for more.
        if (freedom === 1) total += 1;
        return (total * h) / 3;
      };
      const t = studentT(0.95, freedom);
      expect(chanceWithin(t, freedom)).toBeCloseTo(0.95, 12);
      expect(area(t, 20_000) / whole()).toBeCloseTo(0.95, 8);
    },
  );
});

describe('spread and flow (computed, four-figure t)', () => {
  test.each([
    { readings: times(24.1, 24.6, 23.9), mean: 24.2, deviation: '0.3606' },
    { readings: times(60, 61, 59, 60), mean: 60, deviation: '0.8165' },
  ])('mean $mean s, standard deviation $deviation s', ({ readings, mean, deviation }) => {
    expectWithin(spread(readings)! * mean, Number(deviation), asPrinted(deviation));
    expectWithin(meanFlow(litres(mean), readings), 60, 1e-12);
  });

  test('2 gal in 24.1, 24.6 and 23.9 s is 4.959 gal/min, spread 1.49 %', () => {
    const gallon = findUnit('gal')!;
    const flow = meanFlow(litres(toCanonical(2, gallon)), times(24.1, 24.6, 23.9));
    expectWithin(fromCanonical(flow, findUnit('gal/min')!), 4.959, asPrinted('4.959'));
    expectWithin(spread(times(24.1, 24.6, 23.9))! * 100, 1.49, asPrinted('1.49'));
  });
});

describe('how far the mean may be off, 95 % (computed, four-figure t)', () => {
  test.each([
    { readings: times(24.1, 24.6, 23.9), figure: '0.896' },
    { readings: times(60, 61, 59, 60), figure: '1.299' },
  ])('± $figure s', ({ readings, figure }) => {
    const n = readings.length;
    const mean = readings.reduce((total, reading) => total + reading, 0) / n;
    const half = (studentT(0.95, n - 1) * spread(readings)! * mean) / Math.sqrt(n);
    expectWithin(half, Number(figure), asPrinted(figure));
  });

  test('24.1, 24.6 and 23.9 s: 3.70 % is reached with the three, 3.69 % asks for one more', () => {
    const readings = times(24.1, 24.6, 23.9);
    expect(repeatsNeeded(readings, 0.0371)).toBe(3);
    expect(repeatsNeeded(readings, 0.0369)).toBe(4);
  });
});

describe('repeats that 95 % confidence needs (computed)', () => {
  test.each([
    { variation: 0.01, share: 0.01, repeats: 7 },
    { variation: 0.01, share: 0.02, repeats: 4 },
    { variation: 0.01, share: 0.03, repeats: 3 },
    { variation: 0.01, share: 0.05, repeats: 3 },
    { variation: 0.02, share: 0.01, repeats: 18 },
    { variation: 0.02, share: 0.02, repeats: 7 },
    { variation: 0.02, share: 0.03, repeats: 5 },
    { variation: 0.02, share: 0.05, repeats: 3 },
    { variation: 0.03, share: 0.02, repeats: 12 },
    { variation: 0.03, share: 0.03, repeats: 7 },
    { variation: 0.03, share: 0.05, repeats: 4 },
    { variation: 0.05, share: 0.02, repeats: 27 },
    { variation: 0.05, share: 0.03, repeats: 14 },
    { variation: 0.05, share: 0.05, repeats: 7 },
  ])('spread $variation, within $share: $repeats', ({ variation, share, repeats }) => {
    expect(repeatsNeeded(varied(variation), share)).toBe(repeats);
  });

  test.each([
    { variation: 0.03, share: 0.01 },
    { variation: 0.05, share: 0.01 },
  ])('spread $variation, within $share: more than 30', ({ variation, share }) => {
    expect(repeatsNeeded(varied(variation), share)).toBeGreaterThan(30);
  });
});
