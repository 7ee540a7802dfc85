import { describe, expect, test } from 'vitest';
import { call, type RawArgument } from '../../../functions';
import { outcome, refused, table } from './calls';

describe('too few readings', () => {
  test.each(
    table<[string]>([
      [['FLOW', 2, 'gal', '', 'gal/min'], 'seconds: no reading was given; use one timed bucket or more.'],
      [['FLOW', 2, 'gal', [[''], [0], [null]], 'gal/min'], 'seconds: no reading was given'],
      [['FLOWSPREAD', [[24], ['']]], 'seconds: 1 reading was given; use two timed buckets or more.'],
      [['FLOWSPREAD', 0], 'seconds: no reading was given'],
      [['REPEATS', 24, 5], 'seconds: 1 reading was given'],
      [
        ['REPEATS', [[10], [30]], 5],
        'percent: 5 was given; with a spread of 70.7107 % even 200 timed buckets',
      ],
    ]),
  )('%s is #N/A', (_told, made, words) => {
    expect(outcome(made)).toEqual(refused('#N/A', words));
  });

  test('blank and 0 cells are left out of them', () => {
    const gappy: RawArgument = [
      [24.1, ''],
      [0, 24.6],
      [null, 23.9],
      [false, undefined],
    ];
    expect(call('FLOW', [2, 'gal', gappy, 'gal/min'])).toEqual(
      call('FLOW', [2, 'gal', [[24.1, 24.6, 23.9]], 'gal/min']),
    );
    expect(call('FLOWSPREAD', [gappy])).toEqual(call('FLOWSPREAD', [[[24.1], [24.6], [23.9]]]));
    expect(call('REPEATS', [gappy, 2])).toEqual({ value: 5 });
  });

  test('equal readings still ask for three', () => {
    expect(call('REPEATS', [[[24, 24]], 5])).toEqual({ value: 3 });
    expect(call('FLOWSPREAD', [[[24, 24]]])).toEqual({ value: 0 });
  });
});
