import { describe, expect, test } from 'vitest';
import type { ExampleEntry, FunctionEntry, Outcome, RawArgument, ResultValue } from '../../functions';
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

  const readings = (many: number) => [Array.from({ length: many }, () => 30)];
  const fills = (...numbers: number[]) =>
    numbers.map((number) => `fill ${number}: make up 20 L, pump out 20 L`);
  test.each<[string, RawArgument[], string[]]>([
    ['FLOW', [10, 'L', 30, 'L/min'], ['10 L ÷ 30 s × 60 s/min = 20 L/min']],
    [
      'FLOW',
      [10, 'L', [[20, 40]], 'L/min'],
      ['20 + 40 = 60 s for 2 buckets', '10 L × 2 ÷ 60 s × 60 s/min = 20 L/min'],
    ],
    [
      'FLOW',
      [10, 'L', readings(12), 'L/min'],
      [`${'30 + '.repeat(11)}30 = 360 s for 12 buckets`, '10 L × 12 ÷ 360 s × 60 s/min = 20 L/min'],
    ],
    [
      'FLOW',
      [10, 'L', readings(13), 'L/min'],
      ['the sum of 13 readings = 390 s for 13 buckets', '10 L × 13 ÷ 390 s × 60 s/min = 20 L/min'],
    ],
    [
      'FILLPLAN',
      [240, 20, 'L'],
      ['each fill delivers 20 L', ...fills(1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12)],
    ],
    [
      'FILLPLAN',
      [400, 20, 'L'],
      ['each fill delivers 20 L', ...fills(1, 2, 3, 4, 5, 6, 7, 8, 9, 10), '…', ...fills(20)],
    ],
    [
      'FILLPLAN',
      [25, 20, 'L', 2, 0.9, 'equal'],
      [
        '20 L × 0.9 − 2 L = 16 L from each fill',
        '25 L ÷ 2 fills = 12.5 L each',
        'fill 1: make up 14.5 L, pump out 12.5 L',
        'fill 2: make up 12.5 L, pump out 12.5 L',
      ],
    ],
    ['NEED', [[[5, 0, 2]], [[1, 2, 0]], 'L', 'L'], ['5 × 1 L = 5 L']],
    ['NEED', [[[0, 0]], [[1, 2]], 'L', 'L'], ['Σ plants × dose over 2 groups = 0 L']],
    ['NEED', [readings(9), readings(9), 'L', 'L'], ['Σ plants × dose over 9 groups = 8100 L']],
    ['INUNITS', [8, 'oz/100 gal', 'oz/gal'], ['8 oz ÷ 100 gal = 0.08 oz/gal']],
    ['INUNITS', [0.08, 'oz/gal', 'oz/100 gal'], ['0.08 oz ÷ 1 gal × 100 = 8 oz/100 gal']],
    ['INUNITS', [3, 'gal', 'gal'], ['3 gal, as it was']],
    ['STRENGTH', [8, 'oz', 100, 'gal', 'oz/100 gal'], ['8 oz ÷ 100 gal × 100 = 8 oz/100 gal']],
    ['STRENGTH', [8, 'oz', 100, 'gal', 'oz/gal'], ['8 oz ÷ 100 gal = 0.08 oz/gal']],
    [
      'MEASURABLE',
      [3.76, 'cup', 3.75],
      [
        '3.76 cups, 3.75 cups at most, in measures that people own: 3 3/4 cups',
        '180 tsp = 3.75 cups',
        '-0.265957 % off: 3.75 cups',
      ],
    ],
    ['MEASURABLE', [0, 'cup'], ['nothing to measure: 0']],
    ['WEIGHT', [100, 'L', 'kg'], ['100 L × 998.2 g/L = 99820 g', '99820 g = 99.82 kg']],
    ['BARREL', [1, 0.5, 'm', 'm3', 0.5], ['π × 0.5² ÷ 4 × 1 = 0.19635 m3']],
    [
      'SECONDS',
      [1, 'L', 10, 'gal/min'],
      ['10 gal/min = 37.8541 L/min', '1 L ÷ 37.8541 L/min × 60 s/min = 1.58503 s'],
    ],
  ])('of %s %j tells each step', (name, args, steps) => {
    const working = explain(name, args);
    expect('steps' in working && working.steps.map(({ text }) => text)).toEqual(steps);
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
