import { describe, expect, test } from 'vitest';
import { call, catalogue, type RawArgument } from '../../../functions';

describe('an error value as an argument', () => {
  const error = { error: '#DIV/0!' };

  test.each(
    catalogue.flatMap((entry) =>
      entry.parameters.map((parameter, index) => [entry, parameter, index] as const),
    ),
  )('comes out unchanged, whichever argument it is', (entry, parameter, index) => {
    const args = [...entry.examples[0]!.args];
    args[index] = error;
    expect(call(entry.name, args), parameter.name).toEqual(error);
    args[index] = [[error]];
    expect(call(entry.name, args), parameter.name).toEqual(error);
  });

  test('comes out from within a range, the first in reading order', () => {
    const range: RawArgument = [
      [1, 2],
      [{ error: '#REF!' }, error],
    ];
    expect(call('NEED', [range, range, 'gal', 'gal'])).toEqual({ error: '#REF!' });
    expect(call('FLOWSPREAD', [[[24], [error], ['x']]])).toEqual(error);
  });

  test('comes before every other complaint, the first argument’s first', () => {
    expect(call('DILUTE', [-1, 'nonsense', { error: '#N/A' }, error, 'cup'])).toEqual({ error: '#N/A' });
    expect(call('PERPLANT', [1, 1, 'gal', 1, error])).toEqual(error);
  });
});
