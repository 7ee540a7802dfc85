import { readFileSync, readdirSync } from 'node:fs';
import ts from 'typescript';
import { describe, expect, test } from 'vitest';
import * as core from '../../addin/core';
import * as studentT from '../../addin/core/flow/studentT';

// Every exported function of these rooms ends its comment with `@example call // answer`, and each is run here.
const CORE = new URL('../../addin/core/', import.meta.url);
const ROOMS = ['measuring', 'nutrients', 'barrels', 'flow', 'premix'];
// Constructors that name a number's unit; there is nothing to show.
const WITHOUT = 'quantity.ts';

const SOURCE = /^ \* .*\b(Definition|Source)( of [a-z ]+)?: \S/m;
// These look a word up; there is no formula.
const FINDS = /^(find|known)[A-Z]/;

const files = [
  ...ROOMS.flatMap((room) => readdirSync(new URL(`${room}/`, CORE)).map((file) => `${room}/${file}`)),
  'cost.ts',
].filter((file) => !file.endsWith(WITHOUT));

const sourceOf = (file: string) => readFileSync(new URL(file, CORE), 'utf8');
const names: Readonly<Record<string, unknown>> = { ...core, ...studentT };

const run = (code: string): unknown => {
  const plain = ts.transpile(`return (${code});`, { target: ts.ScriptTarget.ES2022 });
  return new Function(...Object.keys(names), plain)(...Object.values(names));
};

/** A number with the tolerance of its last printed digit; '…' leaves the rest open. */
const printed = (answer: string): { value: number; tolerance: number } | undefined => {
  const [, digits, open] = /^(-?\d[\d ]*(?:\.\d+)?)(…?)/.exec(answer) ?? [];
  if (digits === undefined) return undefined;
  const value = Number(digits.replaceAll(' ', ''));
  const decimals = digits.trim().split('.')[1]?.length ?? 0;
  const rounded = Number.isInteger(value) ? 1e-9 : 0.5 * 10 ** -decimals;
  return { value, tolerance: open ? 10 ** -decimals : rounded };
};

const numberOf = (result: unknown): unknown => {
  if (typeof result !== 'object' || result === null || !('kind' in result)) return result;
  return 'volume' in result ? result.volume : 'mass' in result ? result.mass : result;
};

/** The unit after the number says what kind of amount the result is. */
const kindOf = (answer: string): string | undefined =>
  /\d g\b/.test(answer) ? 'mass' : /\d L\b/.test(answer) ? 'volume' : undefined;

describe.each(files)('%s', (file) => {
  const source = sourceOf(file);
  const examples = [...source.matchAll(/@example (.+?) \/\/ (.+?)\s*(?:\*\/)?$/gm)];

  test('every exported function has an example', () => {
    const functions = [...source.matchAll(/^export const (\w+) = (?:<[^>]*>)?\(/gm)].map(([, name]) => name!);
    const shown = examples.map(([, code]) => /^\w+/.exec(code!)![0]);
    expect(functions).not.toEqual([]);
    expect(shown).toEqual(functions);
  });

  test('every exported function that reckons names the source of its formula', () => {
    const comments = [
      ...source.matchAll(/\/\*\*((?:(?!\*\/)[^])*)\*\/\s*export const (\w+) = (?:<[^>]*>)?\(/g),
    ];
    expect(comments.length).toBeGreaterThan(0);
    const without = comments.filter(([, text, name]) => !FINDS.test(name!) && !SOURCE.test(text!));
    expect(without.map(([, , name]) => name)).toEqual([]);
  });

  test('every exported function that refuses what it is given says so', () => {
    const functions = [
      ...source.matchAll(
        /\/\*\*((?:(?!\*\/)[^])*)\*\/\s*export const (\w+) = ((?:<[^>]*>)?\([^]*?)(?=\n\/\*\*|$)/g,
      ),
    ];
    const silent = functions.filter(
      ([, text, , body]) => / throw /.test(body!) && !text!.includes('@throws'),
    );
    expect(silent.map(([, , name]) => name)).toEqual([]);
  });

  test.each(examples.map(([, code, answer]) => ({ code: code!, answer: answer! })))(
    '$code is $answer',
    ({ code, answer }) => {
      const result = run(code);
      const number = printed(answer);
      if (number === undefined) {
        expect(result).toEqual(run(answer));
        return;
      }
      if (typeof result === 'object') expect(result).toHaveProperty('kind', kindOf(answer));
      expect(Math.abs((numberOf(result) as number) - number.value)).toBeLessThanOrEqual(number.tolerance);
    },
  );
});
