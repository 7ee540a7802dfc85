import { describe, expect, test } from 'vitest';
import {
  countFor,
  litres,
  litresPerMinute,
  meanFlow,
  need,
  repeatsNeeded,
  seconds,
  serves,
  spread,
} from '../../../addin/core';

const count = (exact: number, step: number) => countFor(litres(exact), litresPerMinute(60), seconds(step));

describe('counts that a person can keep', () => {
  test.each([
    [15.4, 1, 15],
    [15.5, 1, 16],
    [15.5 * (1 - 1e-12), 1, 16],
    [15.4999, 1, 15],
    [17, 5, 15],
    [17.5, 5, 20],
    [0.2, 1, 1],
    [2, 5, 5],
  ])('%f s by steps of %f s: %f s', (exact, step, kept) => {
    expect(count(exact, step)).toBe(kept);
  });

  test('plants and doses are counted group by group', () => {
    expect(need([120, 80, 0], [litres(4), litres(2), litres(8)])).toBe(640);
    expect(need([], [])).toBe(0);
    expect(() => need([1, 2], [litres(1)])).toThrow(RangeError);
  });

  test('a volume serves whole plants', () => {
    expect(serves(litres(2.1), litres(0.7))).toBe(3);
    // 0.3 ÷ 0.1 is 2.9999999999999996 to a double.
    expect(serves(litres(0.3), litres(0.1))).toBe(3);
    expect(serves(litres(2.09), litres(0.7))).toBe(2);
    expect(serves(litres(0.1), litres(0.7))).toBe(0);
  });
});

describe('timed buckets', () => {
  test('flow is volume × readings ÷ their sum, not the mean of the flows', () => {
    expect(meanFlow(litres(10), [seconds(20), seconds(40)])).toBe(20);
  });

  test('one reading has no spread', () => {
    expect(spread([seconds(20)])).toBeUndefined();
    expect(spread([])).toBeUndefined();
    expect(repeatsNeeded([seconds(20)], 0.05)).toBeUndefined();
  });

  test('three repeats at least, two hundred at most', () => {
    expect(repeatsNeeded([20, 20.01].map(seconds), 0.05)).toBe(3);
    expect(repeatsNeeded([10, 20].map(seconds), 0.05)).toBeUndefined();
    expect(repeatsNeeded([10, 20].map(seconds), 0.1)).toBe(88);
  });
});
