import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { FunctionEntry, Outcome, ParameterEntry, RawArgument, RawScalar } from '../../functions';
import { call, catalogue, explain } from '../../functions';

import { callsOf, fitting, rangeOf } from './randomCalls';

const isError = (value: unknown): boolean =>
  typeof value === 'object' && value !== null && typeof (value as { error?: unknown }).error === 'string';

/** Error texts anywhere among the arguments; only these may come out without a sentence. */
const errorsWithin = (args: readonly unknown[]): string[] =>
  args
    .flatMap((raw) =>
      Array.isArray(raw) ? raw.flatMap((row: unknown) => (Array.isArray(row) ? row : [])) : [raw],
    )
    .filter(isError)
    .map((cell) => (cell as { error: string }).error);

const expectProper = (outcome: Outcome, args: readonly unknown[]): void => {
  if ('value' in outcome) {
    const cells: readonly (readonly unknown[])[] = Array.isArray(outcome.value)
      ? outcome.value
      : [[outcome.value]];
    expect(cells.length).toBeGreaterThan(0);
    for (const cell of cells.flat()) {
      if (typeof cell === 'string') expect(cell).not.toBe('');
      else expect(Number.isFinite(cell)).toBe(true);
    }
    return;
  }
  if (outcome.sentence === undefined) expect(errorsWithin(args)).toContain(outcome.error);
  else {
    expect(['#VALUE!', '#N/A', '#NAME?']).toContain(outcome.error);
    expect(outcome.sentence).toMatch(/^.+\.$/s);
    expect(outcome.sentence).not.toMatch(
      /undefined|NaN|Infinity(?! was given)|\[object|could not be computed/,
    );
  }
};

/** A working reckons in its own order, so that its last figure of six may round the other way. */
const expectToldIn = (text: string, last: number | string): void => {
  if (typeof last === 'string') return expect(text).toContain(last);
  const numbers = (text.match(/-?\d[\d.]*(e[+-]?\d+)?/g) ?? []).map(Number);
  const nearest = Math.min(...numbers.map((number) => Math.abs(number - last)));
  expect(nearest, `${last} in ${text}`).toBeLessThanOrEqual(1.1e-5 * Math.abs(last));
};

/** Functions whose answer may be 0 with no 0 among the numbers: whole plants, a spread, a temperature, too little to measure. */
const expectNoSilentZero = (entry: FunctionEntry, args: readonly unknown[], outcome: Outcome): void => {
  if (!('value' in outcome) || outcome.value !== 0) return;
  const temperature = args.some((unit) => typeof unit === 'string' && /^\s*[cf]\s*$/i.test(unit));
  if (['SERVES', 'MEASURED'].includes(entry.name) || temperature) return;
  const zero = (cell: unknown): boolean => !cell || (typeof cell === 'string' && cell.trim() === '');
  const cells = (raw: unknown): unknown[] => (Array.isArray(raw) ? raw.flat() : [raw]);
  const asked = entry.parameters.map((parameter, index) => ({ parameter, given: cells(args[index]) }));
  const numbers = asked.filter(({ parameter }) => !parameter.optional && parameter.type !== 'text');
  if (entry.name === 'FLOWSPREAD') {
    const readings = numbers[0]!.given.filter((cell) => !zero(cell)).map(Number);
    expect(new Set(readings).size).toBe(1);
    return;
  }
  if (entry.name === 'NEED') {
    const [plants, doses] = numbers.map(({ given }) => given);
    expect(plants!.every((cell, index) => zero(cell) || zero(doses![index]))).toBe(true);
    return;
  }
  expect(numbers.some(({ given }) => given.length === 1 && zero(given[0]))).toBe(true);
};

const oddNumber = fc.oneof(
  fc.double(),
  fc.integer({ min: -3, max: 1000 }),
  fc.constantFrom(
    0,
    -0,
    1,
    0.5,
    1e-320,
    1e-12,
    1e12,
    1e200,
    Number.MAX_VALUE,
    Number.MIN_VALUE,
    NaN,
    Infinity,
  ),
);

const oddScalar: fc.Arbitrary<RawScalar> = fc.oneof(
  oddNumber,
  fc.string(),
  fc.boolean(),
  fc.constantFrom(null, undefined, '', ' ', '5', { error: '#DIV/0!' }, { error: '#REF!' }),
);

describe.each(catalogue.map((entry) => [entry.name, entry] as const))('%s', (name, entry) => {
  test('answers or refuses in a sentence, whatever it is given', () => {
    fc.assert(
      fc.property(fc.oneof(fc.array(fc.anything()), fc.array(fc.jsonValue())), (args) => {
        expectProper(call(name, args as RawArgument[]), args);
        explain(name, args as RawArgument[]);
      }),
      { numRuns: 150 },
    );
  });

  test('answers or refuses in a sentence with odd values among fitting ones', () => {
    const nearly = (parameter: ParameterEntry) =>
      fc.oneof(
        { weight: 4, arbitrary: fitting(parameter) },
        { weight: 1, arbitrary: oddScalar },
        { weight: 1, arbitrary: oddNumber },
        { weight: 1, arbitrary: rangeOf(oddScalar) },
      );
    fc.assert(
      fc.property(callsOf(entry, nearly), (args) => {
        const outcome = call(name, args);
        expectProper(outcome, args);
        expectNoSilentZero(entry, args, outcome);
        const told = explain(name, args);
        if ('value' in outcome) expect(told).toHaveProperty('value', outcome.value);
        else expect(told).toEqual(outcome);
      }),
      { numRuns: 400 },
    );
  });

  test('tells a working that ends with its answer, and nothing below 0 but a temperature', () => {
    let answered = 0;
    fc.assert(
      fc.property(callsOf(entry, fitting), (args) => {
        const outcome = call(name, args);
        expectProper(outcome, args);
        if (!('value' in outcome)) return;
        answered += 1;
        const working = explain(name, args);
        if (!('steps' in working)) throw new Error(working.sentence);
        const cells = (Array.isArray(outcome.value) ? outcome.value : [[outcome.value]]) as (
          number | string
        )[][];
        const last = cells.at(-1)!.at(-1)!;
        expectToldIn(working.steps.at(-1)!.text, last);
        const temperature = args.some((unit) => unit === 'C' || unit === 'F');
        for (const cell of cells.flat()) {
          if (typeof cell === 'number' && !temperature) expect(cell).toBeGreaterThanOrEqual(0);
        }
        for (const { text } of working.steps) expect(text).not.toMatch(/undefined|NaN|Infinity|\[object/);
      }),
      { numRuns: 300 },
    );
    expect(answered).toBeGreaterThan(3);
  });
});

test('a name that is anything at all is #NAME? in a sentence', () => {
  fc.assert(
    fc.property(fc.anything(), fc.array(fc.anything()), (name, args) => {
      const outcome = call(name as string, args as RawArgument[]);
      expectProper(outcome, args);
      expect(outcome).toHaveProperty('error', '#NAME?');
    }),
    {
      examples: [
        [-Infinity, []],
        [NaN, []],
        [undefined, []],
        [{}, []],
      ],
    },
  );
});
