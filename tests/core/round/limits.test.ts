import { describe, expect, test } from 'vitest';
import { compareTanks, grams, litres, repeatsNeeded, seconds, spread } from '../../../addin/core';
import { studentT } from '../../../addin/core/flow/studentT';
import { namesInWords } from '../../../addin/core/round/inWords';
import { fillsOf, group, liquid, planned, powder, rate, refusedBy, round } from './garden';

describe('a limit that is reached exactly is not passed', () => {
  test('a bed of 1,000,000 plants, each with 1 mL', () => {
    const doses = [{ sizeClass: 'large', dose: litres(0.001) }];
    const many = (plants: number) => round({ doses, groups: [group('Gate', 'Tap', 'large', plants)] });
    expect(planned(many(1_000_000)).totals.plants).toBe(1_000_000);
    expect(refusedBy(many(1_000_001)).place).toBe('garden');
  });

  test('a dose under 1 mL is refused', () => {
    const doses = [{ sizeClass: 'large', dose: litres(0.00099) }];
    expect(refusedBy(round({ doses })).place).toBe('doses');
  });

  test('a barrel that delivers 1 mL a fill', () => {
    const doses = [{ sizeClass: 'large', dose: litres(0.001) }];
    const small = { barrel: litres(0.1), fillLine: 0.01, heel: litres(0) };
    const groups = [group('Gate', 'Tap', 'large', 3)];
    expect(planned(round({ doses, groups, rigChanges: small })).totals.fills).toBe(3);
    const under = { ...small, heel: litres(1e-6) };
    expect(refusedBy(round({ doses, groups, rigChanges: under })).refused).toMatch(/^Heel: /);
  });

  test('a nutrient of 100 %', () => {
    const product = (N: number) => round({ mix: [{ ...powder, analysis: { N } }] });
    expect(planned(product(1)).totals.plants).toBeGreaterThan(0);
    expect(refusedBy(product(1.0001)).refused).toMatch(/^N of /);
  });

  test('liquids of 100 % of the finished solution in all', () => {
    const liquids = (...rates: number[]) =>
      round({
        mix: rates.map((one, place) => ({
          ...liquid,
          name: `liquid ${place}`,
          rate: rate(one, 'mL/L'),
          greatestRate: undefined,
        })),
      });
    expect(planned(liquids(500, 500)).totals.plants).toBeGreaterThan(0);
    expect(refusedBy(liquids(500, 501)).refused).toMatch(/^Mix: liquids of 100.1 %/);
    // A powder dissolves; only liquids add up.
    const scooped = { ...powder, rate: rate(600, 'mL/L'), greatestRate: undefined };
    const drink = { ...liquid, rate: rate(500, 'mL/L'), greatestRate: undefined };
    expect(planned(round({ mix: [scooped, drink] })).totals.plants).toBeGreaterThan(0);
  });

  test('a start at midnight, and at the last second of the day', () => {
    const begun = (start: number) => fillsOf(planned(round({ start: seconds(start) })))[0]!.premixStart;
    expect(begun(0)).toBe(0);
    expect(begun(86_399)).toBe(86_399);
    expect(refusedBy(round({ start: seconds(-1) })).place).toBe('round');
  });

  test('a round that takes as long as it may, with a barrel as heavy as it may be', () => {
    const tanks = [{ barrel: litres(102) }];
    const [row] = compareTanks(round(), tanks).rows;
    if (row === undefined || 'refused' in row) throw new Error('The barrel is refused.');
    const limits = { mostFills: row.fills, mostWeight: row.weightFull, longestRound: row.roundTime };
    expect(compareTanks(round(), tanks, limits).smallest).toBe(0);
    const tighter: (typeof limits)[] = [
      { ...limits, mostFills: row.fills - 1 },
      { ...limits, mostWeight: grams(row.weightFull * 0.999) },
      { ...limits, longestRound: seconds(row.roundTime * 0.999) },
    ];
    for (const passed of tighter) expect(compareTanks(round(), tanks, passed).smallest).toBeUndefined();
  });

  test('200 timed buckets', () => {
    const readings = [20, 24, 28].map(seconds);
    const within = (studentT(0.95, 199) * spread(readings)!) / Math.sqrt(200);
    expect(repeatsNeeded(readings, within)).toBe(200);
    expect(repeatsNeeded(readings, within * 0.9999)).toBeUndefined();
  });
});

test('three names are told in full, and one more is counted', () => {
  expect(namesInWords(['a', 'b', 'c'])).toBe('“a”, “b”, “c”');
  expect(namesInWords(['a', 'b', 'c', 'd'])).toBe('“a”, “b”, “c” and 1 more');
  expect(namesInWords(['a'.repeat(40), 'b'.repeat(41)])).toBe(`“${'a'.repeat(40)}”, “${'b'.repeat(40)}…”`);
});
