import { describe, expect, test } from 'vitest';
import type { ExampleEntry, FunctionEntry, Outcome, ResultValue } from '../../functions';
import { call, catalogue, explain, formulaOf } from '../../functions';
import { show } from '../../functions/telling';

const NEAR = 1e-12;

const expectSame = (outcome: Outcome, answer: ResultValue): void => {
  if (!('value' in outcome)) throw new Error(outcome.sentence ?? outcome.error);
  const rows = (value: ResultValue) => (Array.isArray(value) ? value : [[value]]) as (number | string)[][];
  const [found, wanted] = [rows(outcome.value), rows(answer)];
  expect(found.map((row) => row.length)).toEqual(wanted.map((row) => row.length));
  for (const [row, cells] of wanted.entries()) {
    for (const [column, cell] of cells.entries()) {
      const given = found[row]![column]!;
      if (typeof cell === 'string') expect(given).toBe(cell);
      else expect(Math.abs(Number(given) - cell)).toBeLessThanOrEqual(NEAR * Math.max(1, Math.abs(cell)));
    }
  }
};

const everyExample = catalogue.flatMap((entry) =>
  entry.examples.map((example): [string, FunctionEntry, ExampleEntry] => [
    formulaOf(entry.name, example.args),
    entry,
    example,
  ]),
);

test.each(everyExample)('%s', (_formula, entry, { args, answer }) => {
  expectSame(call(entry.name, args), answer);
});

describe('a working', () => {
  test.each(everyExample)('of %s comes to the same answer', (_formula, entry, { args, answer }) => {
    const working = explain(entry.name, args);
    if (!('steps' in working)) throw new Error(working.sentence);
    expectSame(working, answer);
    const last = working.steps[working.steps.length - 1]!.text;
    const told = Array.isArray(answer) ? answer.at(-1)!.at(-1)! : (answer as number | string);
    expect(last).toContain(typeof told === 'number' ? show(told) : told);
    expect(working.arguments.map(({ name }) => name)).toEqual(entry.parameters.map(({ name }) => name));
  });

  test('tells what was done, in units', () => {
    const working = explain('DILUTE', [1, 'tbsp/gal', 60, 'gal', 'cup']);
    expect(working).toEqual({
      name: 'DILUTE',
      summary: 'Product for a volume of finished solution',
      arguments: [
        { name: 'rate', given: '1' },
        { name: 'rate_unit', given: '"tbsp/gal"' },
        { name: 'volume', given: '60' },
        { name: 'volume_unit', given: '"gal"' },
        { name: 'amount_unit', given: '"cup"' },
        { name: 'density', given: 'left out: not known' },
      ],
      steps: [
        { text: '60 gal × 1 tbsp/gal = 60 tbsp' },
        { text: '60 tbsp = 3.75 cups', source: 'NIST Handbook 44, Appendix C' },
      ],
      value: 3.75,
      source: 'Definition: product = rate × finished solution',
    });
  });

  test('tells the rounding error of a measure', () => {
    const working = explain('MEASURE', [1234, 'g', 50]);
    expect('steps' in working && working.steps.map(({ text }) => text)).toEqual([
      'to the nearest 50 g: 1250 g, 1.2966 % over',
      '1250 g = 1 kg 250 g',
    ]);
  });

  test('of a bad call is the same refusal as its value', () => {
    expect(explain('DILUTE', [-1, 'tbsp/gal', 60, 'gal', 'cup'])).toEqual(
      call('DILUTE', [-1, 'tbsp/gal', 60, 'gal', 'cup']),
    );
  });
});

test('every function has an example, a source and a summary without a full stop', () => {
  for (const entry of catalogue) {
    expect(entry.examples.length, entry.name).toBeGreaterThan(0);
    expect(entry.source, entry.name).not.toBe('');
    expect(entry.summary, entry.name).toMatch(/^[A-Z].*[^.]$/);
  }
});
