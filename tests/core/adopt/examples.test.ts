import { readFileSync, readdirSync } from 'node:fs';
import { expect, test } from 'vitest';
import * as bedNames from '../../../addin/core/adopt/bedNames';
import * as cellText from '../../../addin/core/adopt/cellText';
import * as headings from '../../../addin/core/adopt/headings';
import * as nearWord from '../../../addin/core/adopt/nearWord';
import * as plantCount from '../../../addin/core/adopt/plantCount';
import * as proposeAdoption from '../../../addin/core/adopt/proposeAdoption';
import * as roseWords from '../../../addin/core/adopt/roseWords';
import * as sizeClass from '../../../addin/core/adopt/sizeClass';
import * as phrases from '../../../addin/core/adopt/words/phrases';

// Every `@example call // answer` of the room is run, so that the comments stay true.
const ROOM = new URL('../../../addin/core/adopt/', import.meta.url);
const names: Readonly<Record<string, unknown>> = {
  ...bedNames,
  ...cellText,
  ...headings,
  ...nearWord,
  ...plantCount,
  ...proposeAdoption,
  ...roseWords,
  ...sizeClass,
  ...phrases,
};
const run = (code: string): unknown =>
  new Function(...Object.keys(names), `return (${code});`)(...Object.values(names));

const examples = readdirSync(ROOM, { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith('.ts'))
  .flatMap((file) => {
    const source = readFileSync(new URL(file, ROOM), 'utf8');
    return [...source.matchAll(/@example (.+?) \/\/ (.+?)\s*(?:\*\/)?$/gm)].map(([, code, answer]) => ({
      code: code!,
      answer: answer!,
    }));
  });

test('the room shows its examples', () => expect(examples.length).toBeGreaterThanOrEqual(12));

test.each(examples)('$code is $answer', ({ code, answer }) => {
  expect(run(code)).toEqual(run(answer));
});
