import { describe, expect, test } from 'vitest';
import { call, catalogue, type FunctionEntry, type RawArgument } from '../../../functions';
import { refused } from './calls';

const RANGE = [[1], [2]];

const singleArguments = ({ parameters }: FunctionEntry) =>
  parameters.flatMap((parameter, index) => (parameter.range ? [] : [{ name: parameter.name, index }]));

const taking = catalogue.filter((entry) => singleArguments(entry).length > 0);

describe('where one value belongs', () => {
  test.each(taking.map((entry) => [entry.name, entry] as const))(
    '%s refuses a longer range',
    (name, entry) => {
      for (const argument of singleArguments(entry)) {
        const args: RawArgument[] = entry.parameters.map(
          (_, index) => entry.examples[0]!.args[index] ?? null,
        );
        args[argument.index] = RANGE;
        const sentence = `${argument.name}: a range of 2 × 1 cells was given; use one cell or one value.`;
        expect(call(name, args)).toEqual(refused('#VALUE!', sentence));
      }
    },
  );

  test.each(catalogue.map((entry) => [entry.name, entry] as const))(
    '%s takes a range of one cell as its value',
    (name, { examples }) => {
      const { args } = examples[0]!;
      const wrapped = args.map((arg): RawArgument => (Array.isArray(arg) ? arg : [[arg as string | number]]));
      expect(call(name, wrapped)).toEqual(call(name, args));
    },
  );
});
