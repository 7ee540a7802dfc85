import { describe, expect, test } from 'vitest';
import { call, type RawArgument } from '../../../functions';
import { refused } from './calls';

describe('arguments as hosts hand them over', () => {
  test('TRUE and FALSE count as 1 and 0', () => {
    expect(call('DILUTE', [true, 'tbsp/gal', 60, 'gal', 'cup'])).toEqual({ value: 3.75 });
    expect(call('DILUTE', [false, 'tbsp/gal', 60, 'gal', 'cup'])).toEqual({ value: 0 });
    expect(call('NEED', [[[true], [true]], [[2], [3]], 'L', 'L'])).toEqual({ value: 5 });
  });

  test('a 1 × 1 range is its one value', () => {
    expect(call('DILUTE', [[[1]], [['tbsp/gal']], [[60]], [['gal']], [['cup']]])).toEqual({ value: 3.75 });
  });

  test.each([[[[1, 2]]], [[[1], [2]]], [[[['a', 'b']]]]] as RawArgument[][])(
    'a larger range where one value belongs is #VALUE!: %j',
    (range) => {
      expect(call('DILUTE', [range, 'tbsp/gal', 60, 'gal', 'cup'])).toHaveProperty('error', '#VALUE!');
      expect(call('DILUTE', [1, range, 60, 'gal', 'cup'])).toHaveProperty('error', '#VALUE!');
      expect(call('DILUTE', [1, 'tbsp/gal', 60, 'gal', 'cup', range])).toHaveProperty('error', '#VALUE!');
    },
  );

  test('a range argument may be a single cell', () => {
    expect(call('NEED', [12, 2, 'L', 'L'])).toEqual({ value: 24 });
    expect(call('FLOW', [10, 'L', 30, 'L/min'])).toEqual({ value: 20 });
  });

  test('too many arguments are #VALUE!, unless the last ones are left out', () => {
    expect(call('PERPLANT', [200, 1, 'gal', 7])).toEqual(
      refused('#VALUE!', 'PERPLANT: 4 arguments were given; use 3 at most.'),
    );
    expect(call('PERPLANT', [200, 1, 'L', null, undefined])).toEqual({ value: 200 });
  });
});

test('arguments that are no list are refused', () => {
  for (const args of [undefined, null, 5, 'x', {}] as unknown as RawArgument[][]) {
    expect(call('DILUTE', args)).toEqual(refused('#VALUE!', 'arguments:'));
  }
});
