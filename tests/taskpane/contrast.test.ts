import { readFileSync } from 'node:fs';

import { describe, expect, test } from 'vitest';

import { contrast } from '../contrast';

const css = readFileSync(new URL('../../taskpane/pane.css', import.meta.url), 'utf8');

const tokens = new Map(
  [...css.matchAll(/--([\w-]+):\s*light-dark\((#[0-9a-f]{6}), (#[0-9a-f]{6})\)/g)].map(
    ([, name, light, dark]) => [String(name), { light: String(light), dark: String(dark) }],
  ),
);

const number = (colour: string): number => parseInt(colour.slice(1), 16);

const shade = (token: string, theme: 'light' | 'dark'): string => {
  const found = tokens.get(token)?.[theme];
  if (found === undefined) throw new Error(`pane.css has no colour --${token}.`);
  return found;
};

const GROUNDS = ['paper', 'raised', 'accent-wash', 'attention-wash'];

// WCAG 2.2: 1.4.3 asks 4.5 of text, 1.4.11 asks 3 of the edges of controls, marks and the focus ring.
const pairs: [string, string, number][] = [
  ...GROUNDS.map((ground): [string, string, number] => ['ink', ground, 4.5]),
  ...['paper', 'raised'].map((ground): [string, string, number] => ['quiet', ground, 4.5]),
  ...['paper', 'raised', 'accent-wash'].map((ground): [string, string, number] => ['accent', ground, 4.5]),
  ...['paper', 'raised', 'attention-wash'].map((ground): [string, string, number] => [
    'attention',
    ground,
    4.5,
  ]),
  ['on-accent', 'accent', 4.5],
  ['edge', 'paper', 3],
  ['edge', 'raised', 3],
];

describe.each(['light', 'dark'] as const)('in the %s', (theme) => {
  test.each(pairs)('%s on %s reaches %d', (over, ground, least) => {
    expect(contrast(number(shade(over, theme)), number(shade(ground, theme)))).toBeGreaterThanOrEqual(least);
  });
});

test('no colour is written but as a token', () => {
  const rules = css.replace(/^\s*--[\w-]+:.*$/gm, '');
  expect(rules.match(/#[0-9a-f]{3,8}\b|rgba?\(|hsla?\(/gi) ?? []).toEqual([]);
});

test('black on white is 21, the published greatest contrast (WCAG 2.2, "contrast ratio")', () => {
  expect(contrast(0x000000, 0xffffff)).toBeCloseTo(21, 10);
});
