import { expect, test } from 'vitest';
import { clock, howLong } from '../../../addin/core';

const DAY = 1440;

test.each([
  [0, '0:00'],
  [425, '7:05'],
  [426, '7:06'],
  [DAY - 1, '23:59'],
  [DAY, '0:00 next day'],
  [DAY + 61, '1:01 next day'],
  [2 * DAY, '0:00, 2 days on'],
  [3 * DAY + 750, '12:30, 3 days on'],
])('%d minutes after midnight are told as %s', (minutes, told) => {
  expect(clock(minutes / DAY)).toBe(told);
});

test('half a minute goes up, whatever noise a share of the day brings', () => {
  for (let minutes = 0; minutes < DAY; minutes += 1) {
    expect(clock((minutes + 0.5) / DAY)).toBe(clock((minutes + 1) / DAY));
    expect(clock((minutes + 0.49) / DAY)).toBe(clock(minutes / DAY));
  }
});

test.each([
  [0, 5, '0 min'],
  [0.1, 5, '5 min'],
  [2.5, 5, '5 min'],
  [7.4, 5, '5 min'],
  [57.5, 5, '1 h'],
  [94, 5, '1 h 35 min'],
  [94, 1, '1 h 34 min'],
  [0.7, 0.1, '0.7 min'],
])('%d minutes to the nearest %d: %s', (minutes, step, told) => {
  expect(howLong(minutes, step)).toBe(told);
});
