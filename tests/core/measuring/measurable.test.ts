import { expect, test } from 'vitest';
import { convert, findUnit, finestMeasure, measurable, suitingStep, toldIn } from '../../../addin/core';

const unit = (token: string) => findUnit(token)!;

/** How far the answer may be from the amount, counted in the smallest measure: found by trying every whole step. */
const leastAway = (amount: number, token: string, most: number): number | undefined => {
  const { unit: smallest } = finestMeasure(unit(token));
  const wanted = Math.min(amount, most);
  const step = suitingStep(wanted, unit(token));
  const [exact, limit] = [wanted, most].map((one) => convert(one, unit(token), smallest)) as [number, number];
  const steps = Array.from(
    { length: Math.ceil((exact * 1.03) / step) + 1 },
    (_, index) => (index + 1) * step,
  );
  const within = steps.filter((one) => one <= limit * (1 + 1e-9) && one >= exact * 0.97 - step);
  const away = (one: number) => Math.abs(one - exact);
  const nearest = Math.min(...within.map(away));
  const few = within.filter((one) => toldIn(one, unit(token)).length <= 2).map(away);
  const close = few.filter((one) => one <= Math.max(0.02 * exact, nearest) * (1 + 1e-9));
  // Under half of the finest measure there is nothing to measure.
  if (within.length === 0 || exact < (step / 2) * (1 - 1e-9)) return undefined;
  return close.length > 0 ? Math.min(...close) : nearest;
};

test.each(['tsp', 'cup', 'gal', 'mL', 'L', 'oz', 'lb', 'g', 'imp fl oz', 'imp pt'])(
  '%s: the nearest that two measures hold, three only where two are far off, and never above the most',
  (token) => {
    const { unit: smallest } = finestMeasure(unit(token));
    for (let amount = 0.003; amount < 60; amount *= 1.043) {
      for (const share of [Infinity, 1.01, 1.003, 1, 0.97]) {
        const most = amount * share;
        const found = measurable(amount, unit(token), most);
        const least = leastAway(amount, token, most);
        const told = `${amount} ${token}, ${most} at most`;
        if (least === undefined || found === undefined) {
          expect([found, least], told).toEqual([undefined, undefined]);
          continue;
        }
        const away = convert(found.measured - Math.min(amount, most), unit(token), smallest);
        expect(Math.abs(away), told).toBeCloseTo(least, 9);
        expect(found.measured, told).toBeLessThanOrEqual(most);
        expect(found.words, told).toBe(
          toldIn(convert(found.measured, unit(token), smallest), unit(token)).join(' '),
        );
        expect(found.error, told).toBeCloseTo(found.measured / amount - 1, 12);
      }
    }
  },
);

test('a limit that is a whole number of measures in another unit is reached', () => {
  for (let teaspoons = 1; teaspoons < 100; teaspoons += 1) {
    const most = convert(teaspoons, unit('tsp'), unit('gal'));
    const found = measurable(most * 1.2, unit('gal'), most)!;
    if (toldIn(teaspoons, unit('gal')).length <= 2) expect(found.measured).toBe(most);
    expect(found.measured).toBeLessThanOrEqual(most);
  }
});

test('what no kitchen holds is refused', () => {
  // 10⁹ of the finest measure, 1 mL.
  expect(measurable(1e6, unit('L'))?.measured).toBe(1e6);
  expect(() => measurable(1.001e9, unit('L'))).toThrow(RangeError);
  expect(() => measurable(Infinity, unit('L'))).toThrow(RangeError);
});
