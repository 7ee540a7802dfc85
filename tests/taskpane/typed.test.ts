import { describe, expect, test } from 'vitest';

import { fieldNumber, readNumber } from '../../taskpane/number';
import { aboutTime, clockTime, readClock, readDay } from '../../taskpane/time';

describe('numbers as people type them', () => {
  test.each([
    ['60', 60],
    [' 2.5 ', 2.5],
    ['2.', 2],
    ['.5', 0.5],
    ['2,5', 2.5],
    [',25', 0.25],
    ['3/4', 0.75],
    ['1 1/2', 1.5],
    ['1-1/2', 1.5],
    ['1½', 1.5],
    ['1 ¾', 1.75],
    ['¼', 0.25],
    ['0', 0],
  ])('%s is %d', (typed, number) => {
    expect(readNumber(typed)).toBe(number);
  });

  test.each([
    '',
    'two',
    '6O',
    '-1',
    '1,000',
    '1.2.3',
    '1/0',
    '1e3',
    '60 gal',
    '9'.repeat(400),
    'NaN',
    'Infinity',
  ])('%s is none', (typed) => {
    expect(readNumber(typed)).toBeUndefined();
  });

  test('a field shows no more figures than a person types, and they are read back', () => {
    expect(fieldNumber(227.12470704)).toBe('227.125');
    expect(fieldNumber(60)).toBe('60');
    expect(readNumber(fieldNumber(0.000123456789))).toBeCloseTo(0.000123457, 12);
  });
});

describe('times', () => {
  test.each([
    [0, 'about 0 min'],
    [59, 'about 5 min'],
    [7 * 60, 'about 5 min'],
    [8 * 60, 'about 10 min'],
    [95 * 60 - 100, 'about 1 h 35 min'],
    [2 * 3600, 'about 2 h'],
    [58 * 60, 'about 1 h'],
  ])('%d s is %s', (time, words) => {
    expect(aboutTime(time)).toBe(words);
  });

  test.each([
    [0, '0:00'],
    [25_529, '7:05'],
    [25_530, '7:06'],
    [86_369, '23:59'],
    [86_399, '0:00 next day'],
    [86_400 + 60, '0:01 next day'],
    [3 * 86_400, '0:00, 3 days on'],
  ])('%d s after midnight is %s', (time, words) => {
    expect(clockTime(time)).toBe(words);
  });

  test.each([
    ['7:05', 25_500],
    ['07:05:00', 25_500],
    ['7.05', 25_500],
    ['24:00', undefined],
    ['7:60', undefined],
    ['seven', undefined],
    ['', undefined],
  ])('the clock time %s is %s', (typed, time) => {
    expect(readClock(typed)).toBe(time);
  });

  test.each([
    ['2026-05-03', '2026-05-03'],
    ['2028-02-29', '2028-02-29'],
    ['2026-02-29', undefined],
    ['2026-13-01', undefined],
    ['3 May', undefined],
  ])('the day %s is %s', (typed, day) => {
    expect(readDay(typed)).toBe(day);
  });
});
