import { describe, expect, test } from 'vitest';
import { compareTanks, grams, litres, seconds } from '../../../addin/core';
import { expectSame, fillsOf, group, planned, round } from './garden';

const groups = [group('Gate', 'Tap', 'large', 60), group('Arch', 'Shed', 'large', 10)];
const tanks = [152, 52, 102, 2].map((n) => ({ barrel: litres(n) }));

describe('barrels side by side', () => {
  test('each row says what the plan with that barrel says', () => {
    const { rows } = compareTanks(round({ groups }), tanks);
    expect(rows.length).toBe(4);
    const [row] = rows;
    const plan = planned(round({ groups, rigChanges: { barrel: litres(152) } }));
    if (row === undefined || 'refused' in row) throw new Error('The first barrel is refused.');
    // 240 L at 150 L a fill, then 40 L and the heel.
    expect(row).toMatchObject({ barrel: 152, fills: 3, lastFill: 42, moves: 1, meetsLimits: true });
    expect(row.lastFill).toBe(fillsOf(plan).at(-1)!.makeUp);
    expect(row.roundTime).toBe(plan.totals.duration);
    expectSame(row.weightFull, 152 * 998.2 + 9000);
    // Three premixes of 300 s; 284 L made up at 20 L/min.
    expectSame(row.mixingAndFilling, 900 + (284 / 20) * 60);
  });

  test('a barrel that cannot serve says why and the others are still compared', () => {
    const { rows } = compareTanks(round({ groups }), tanks);
    expect(rows[3]).toEqual({
      barrel: 2,
      refused: 'Heel: 2 L was given; use less than the 2 L that the barrel holds at its fill line.',
      place: 'rig',
    });
  });

  test('a barrel’s own heel and empty weight count before the rig’s', () => {
    const { rows } = compareTanks(round({ groups }), [
      { barrel: litres(152), heel: litres(12), emptyWeight: grams(20_000) },
    ]);
    expect(rows[0]).toMatchObject({ fills: 3, lastFill: 52 });
    expectSame('weightFull' in rows[0]! ? rows[0].weightFull : undefined, 152 * 998.2 + 20_000);
  });

  test('a full barrel is one filled to its line', () => {
    const { rows } = compareTanks(round({ groups, rigChanges: { fillLine: 0.9 } }), [
      { barrel: litres(100) },
    ]);
    expectSame('weightFull' in rows[0]! ? rows[0].weightFull : undefined, 90 * 998.2 + 9000);
  });

  test('where none meets the limits, none is the smallest and all are still told', () => {
    const { rows, smallest } = compareTanks(round({ groups }), tanks, { mostFills: 1 });
    expect(smallest).toBeUndefined();
    expect(rows.map((row) => 'meetsLimits' in row && row.meetsLimits)).toEqual([false, false, false, false]);
  });

  test('a bigger barrel takes no more fills and no more time', () => {
    const sizes = [30, 60, 90, 120, 240].map((n) => ({ barrel: litres(n) }));
    const rows = compareTanks(round({ groups }), sizes).rows.map((row) => {
      if ('refused' in row) throw new Error(row.refused);
      return row;
    });
    for (const [place, row] of rows.entries()) {
      if (place === 0) continue;
      expect(row.fills).toBeLessThanOrEqual(rows[place - 1]!.fills);
      expect(row.roundTime).toBeLessThanOrEqual(rows[place - 1]!.roundTime);
    }
  });
});

describe('the smallest barrel that meets the limits', () => {
  const smallest = (limits: Parameters<typeof compareTanks>[2]) =>
    compareTanks(round({ groups }), tanks, limits).smallest;

  test('without limits it is the smallest that can be planned with', () => {
    expect(smallest({})).toBe(1);
    expect(smallest(undefined)).toBe(1);
  });

  test('of two alike it is the first', () => {
    const alike = [152, 102, 102].map((n) => ({ barrel: litres(n) }));
    expect(compareTanks(round({ groups }), alike).smallest).toBe(1);
  });

  test('at most so many fills', () => {
    // 52 L: 5 and 1; 102 L: 3 and 1; 152 L: 2 and 1.
    expect(smallest({ mostFills: 6 })).toBe(1);
    expect(smallest({ mostFills: 5 })).toBe(2);
    expect(smallest({ mostFills: 3 })).toBe(0);
    expect(smallest({ mostFills: 2 })).toBeUndefined();
  });

  test('at most such a weight, and as long a round', () => {
    expect(smallest({ mostFills: 5, mostWeight: grams(102 * 998.2 + 9000) })).toBe(2);
    expect(smallest({ mostFills: 5, mostWeight: grams(102 * 998.2 + 8999) })).toBeUndefined();
    // 102 L: 4 premixes, 284 L filled, 280 L pumped, 1 move: 1200 + 852 + 1680 + 600 s.
    expect(smallest({ longestRound: seconds(4332.001) })).toBe(2);
    expect(smallest({ longestRound: seconds(4331) })).toBe(0);
  });

  test('rows say which meet the limits', () => {
    const { rows } = compareTanks(round({ groups }), tanks, { mostFills: 4 });
    expect(rows.map((row) => 'meetsLimits' in row && row.meetsLimits)).toEqual([true, false, true, false]);
  });
});
