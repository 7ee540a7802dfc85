import { describe, expect, test } from 'vitest';
import { findUnit, measure } from '../../../addin/core';

const unit = (token: string) => findUnit(token)!;
const words = (amount: number, token: string, finest?: number) => measure(amount, unit(token), finest)?.words;

describe('US volumes are told in cups, tablespoons and teaspoons', () => {
  test.each([
    [3.75, 'cup', '3 3/4 cups'],
    [1, 'cup', '1 cup'],
    [2, 'cup', '2 cups'],
    [0.5, 'cup', '1/2 cup'],
    [1.25, 'cup', '1 1/4 cups'],
    [1.125, 'cup', '1 cup 2 tbsp'],
    [1 / 3, 'cup', '1/3 cup'],
    [2 / 3, 'cup', '1/2 cup 2 tbsp 2 tsp'],
    [4, 'tbsp', '1/4 cup'],
    [3, 'tbsp', '3 tbsp'],
    [5, 'tbsp', '1/4 cup 1 tbsp'],
    [4, 'tsp', '1 tbsp 1 tsp'],
    [0.75, 'tsp', '3/4 tsp'],
    [0.25, 'tsp', '1/4 tsp'],
    [2.5, 'tsp', '2 1/2 tsp'],
    [1, 'fl oz', '2 tbsp'],
    [1, 'pt', '2 cups'],
    [1, 'gal', '16 cups'],
    [53.99, 'tsp', '1 cup 2 tbsp'],
  ])('%f %s: %s', (amount, token, told) => {
    expect(words(amount, token)).toBe(told);
  });

  test.each([
    [3.7, 'tsp', 1, '1 tbsp 1 tsp'],
    [20, 'tbsp', 48, '1 cup'],
    [0.3, 'tsp', 0.125, '1/4 tsp'],
    [0.4, 'tsp', 0.125, '3/8 tsp'],
    [1.29, 'tsp', 0.1, '1.3 tsp'],
    [1.3, 'tsp', 1 / 3, '1 1/3 tsp'],
    [1.7, 'tsp', 1 / 3, '1 2/3 tsp'],
  ])('%f %s to %f tsp: %s', (amount, token, finest, told) => {
    expect(words(amount, token, finest)).toBe(told);
  });
});

describe('other systems keep their own measures', () => {
  test.each([
    [1.25, 'L', '1 L 250 mL'],
    [250.4, 'mL', '250 mL'],
    [2, 'L', '2 L'],
    [1, 'm3', '1000 L'],
    [1250, 'g', '1 kg 250 g'],
    [0.4, 'kg', '400 g'],
    [1500, 'mg', '2 g'],
    [18.25, 'oz', '1 lb 2 1/4 oz'],
    [0.5, 'lb', '8 oz'],
    [2, 'lb', '2 lb'],
    [1, 'imp gal', '8 imp pt'],
    [23.5, 'imp fl oz', '1 imp pt 3 1/2 imp fl oz'],
  ])('%f %s: %s', (amount, token, told) => {
    expect(words(amount, token)).toBe(told);
  });

  test('which tell no fractions where they are metric', () => {
    expect(words(1.5, 'mL', 0.5)).toBe('1.5 mL');
  });
});

describe('rounding', () => {
  test('the error is told as a signed share', () => {
    // 1.13 cups are 54.24 tsp, told as 54.25.
    const told = measure(1.13, unit('cup'))!;
    expect(told.words).toBe('1 cup 2 tbsp 1/4 tsp');
    expect(told.measured).toBeCloseTo(54.25 / 48, 12);
    expect(told.error).toBeCloseTo(0.01 / 54.24, 12);
  });

  test('a tie goes up, and down where a label’s greatest rate forbids more', () => {
    expect(words(1.125, 'tsp')).toBe('1 1/4 tsp');
    expect(measure(1.125, unit('tsp'), undefined, 'down')?.words).toBe('1 tsp');
  });

  test('the noise of units costs no step when rounding down', () => {
    expect(measure(3.75 * (1 - 1e-15), unit('cup'), undefined, 'down')?.words).toBe('3 3/4 cups');
    expect(measure(3.75 * (1 - 1e-9), unit('cup'), undefined, 'down')?.words).toBe(
      '3 1/2 cups 3 tbsp 2 3/4 tsp',
    );
  });

  test('under half of the finest measure there is nothing to tell', () => {
    expect(measure(0.12, unit('tsp'))).toBeUndefined();
    expect(words(0.125, 'tsp')).toBe('1/4 tsp');
    expect(measure(0.2, unit('tsp'), undefined, 'down')).toBeUndefined();
    expect(measure(0.49, unit('g'))).toBeUndefined();
  });

  test('what no kitchen holds is refused', () => {
    expect(() => measure(1e12, unit('gal'))).toThrow(RangeError);
    expect(() => measure(Number.MAX_VALUE, unit('gal'))).toThrow(RangeError);
    expect(() => measure(1e-6, unit('gal'), 1e-12)).toThrow('finest measure is 1e-12');
    expect(() => measure(1, unit('ft'))).toThrow(RangeError);
  });
});
