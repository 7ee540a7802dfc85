import { describe, expect, test } from 'vitest';

import { calendarDay, guessMeasures } from '../../taskpane/locality';

describe('a first guess at the measures', () => {
  test.each([
    [['en-US'], 'US'],
    [['en_US'], 'US'],
    [['en'], 'US'],
    [['es-PR'], 'US'],
    [['es-US', 'de'], 'US'],
    [['es'], 'metric'],
    [['en-GB', 'en-US'], 'metric'],
    [['de_AT'], 'metric'],
    [[undefined, '', 'no language', 'en-US'], 'US'],
    [[], 'metric'],
  ] as const)('from %j is %s', (languages, measures) => {
    expect(guessMeasures(languages)).toBe(measures);
  });
});

test("a moment's day is the one of the user's own calendar", () => {
  expect(calendarDay(new Date(2026, 4, 3, 23, 59))).toBe('2026-05-03');
  expect(calendarDay(new Date(2026, 11, 31, 0, 0))).toBe('2026-12-31');
});
