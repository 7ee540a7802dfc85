import { describe, expect, test } from 'vitest';
import { MOST_FILLS, fewestFills, fillPlan, litres, workingVolume } from '../../../addin/core';

const plan = (need: number, barrel: number, heel: number, line: number, style: 'full' | 'equal') =>
  fillPlan(litres(need), litres(barrel), litres(heel), line, style).map(({ makeUp, pumpedOut }) => [
    makeUp,
    pumpedOut,
  ]);

describe('fills of one barrel', () => {
  test('full ones and a short last; the first makes up the heel', () => {
    expect(plan(500, 200, 10, 1, 'full')).toEqual([
      [200, 190],
      [190, 190],
      [120, 120],
    ]);
  });

  test('equal ones', () => {
    expect(plan(300, 200, 10, 1, 'equal')).toEqual([
      [160, 150],
      [150, 150],
    ]);
  });

  test('the fill line leaves the barrel short of its brim', () => {
    expect(plan(180, 200, 10, 0.75, 'full')).toEqual([
      [150, 140],
      [40, 40],
    ]);
  });

  test('one fill makes up what is needed and the heel, not the whole barrel', () => {
    expect(plan(50, 200, 10, 1, 'full')).toEqual([[60, 50]]);
    expect(plan(50, 200, 10, 1, 'equal')).toEqual([[60, 50]]);
  });

  test('no need takes no fill', () => {
    expect(plan(0, 200, 10, 1, 'full')).toEqual([]);
    expect(fewestFills(litres(0), litres(100))).toBe(0);
  });

  test('a small need takes one fill, however small', () => {
    expect(fewestFills(litres(1e-12), litres(100))).toBe(1);
  });

  test('just above whole barrels takes one more', () => {
    expect(fewestFills(litres(400 * (1 + 1e-12)), litres(100))).toBe(4);
    expect(fewestFills(litres(400 * (1 + 1e-8)), litres(100))).toBe(5);
    expect(fewestFills(litres(400.001), litres(100))).toBe(5);
  });

  test('a heel up to the fill line delivers nothing', () => {
    expect(workingVolume(litres(200), litres(100), 0.5)).toBe(0);
    expect(() => fewestFills(litres(1), litres(0))).toThrow(RangeError);
    expect(() => plan(1, 200, 150, 0.5, 'full')).toThrow(RangeError);
  });

  test('a round of more fills than anyone pumps is refused', () => {
    expect(plan(MOST_FILLS, 1, 0, 1, 'full')).toHaveLength(MOST_FILLS);
    expect(() => plan(MOST_FILLS + 1, 1, 0, 1, 'full')).toThrow(RangeError);
    expect(() => plan(Number.MAX_VALUE, 1e-3, 0, 1, 'equal')).toThrow(RangeError);
  });
});
