import * as z from 'zod';
import { findRateUnit, findUnit, knownUnits } from '../../core';
import { inRange, rangeWords, type NumberRange } from './range';
import type { UnitKind } from './usualUnits';

/**
 * What a cell may hold. The message of each schema says what is allowed, as the end of "…; use ___.": the place and
 * what was given are put before it by `cellSentence`.
 */

const trimmed = (value: unknown): unknown => (typeof value === 'string' ? value.trim() : value);
const blank = (value: unknown): boolean => value === null || value === undefined || trimmed(value) === '';

/** The same cell, which may also be blank; a blank one comes to undefined. */
export const optional = <T>(schema: z.ZodType<T>): z.ZodType<T | undefined> =>
  z.preprocess((value) => (blank(value) ? undefined : value), schema.optional());

/** A number; text that looks like one is text and is refused, as in the worksheet functions. */
export const numberCell = (range: NumberRange, words?: string): z.ZodType<number> => {
  const error = ({ input }: { readonly input?: unknown }) => words ?? rangeWords(range, input);
  return z.number({ error }).refine((n) => inRange(n, range), { error });
};

/** A name or a few words; a number becomes its text, so that beds may be called 1, 2 and 3. */
export const textCell = (words: string): z.ZodType<string> =>
  z.preprocess(
    (value) => (typeof value === 'number' ? String(value) : trimmed(value)),
    z.string({ error: words }).min(1, { error: words }),
  );

/** Words of any kind, '' where the cell is blank. */
export const remarkCell: z.ZodType<string> = z.preprocess(
  (value) => (blank(value) ? '' : String(trimmed(value))),
  z.string(),
);

/** One of a few words, in capital or small letters. */
export const choiceCell = <Choice extends string>(
  choices: readonly [Choice, ...Choice[]],
  words = choices.join(' or '),
): z.ZodType<Choice> =>
  z.preprocess(
    (value) =>
      typeof value === 'string'
        ? choices.find((choice) => choice.toLowerCase() === value.trim().toLowerCase())
        : value,
    z.enum(choices, { error: words }),
  );

/** yes or no; TRUE and FALSE mean the same. */
export const yesNoCell: z.ZodType<boolean> = z
  .preprocess(
    (value) => (typeof value === 'boolean' ? (value ? 'yes' : 'no') : value),
    choiceCell(['yes', 'no']),
  )
  .transform((answer) => answer === 'yes');

const RATE = 'a rate as labels print it, such as tbsp/gal, mL/L or oz/100 gal';

/** A unit of a kind, told by its token. */
export const unitCell = (kind: UnitKind): z.ZodType<string> => {
  const packs = ['volume', 'mass'] as const;
  const families = kind === 'pack' ? packs : kind === 'rate' ? [] : [kind];
  const tokens = families.flatMap((family) => knownUnits(family)).join(', ');
  const of = kind === 'pack' ? `a unit of volume or mass: ${tokens}` : `one of ${tokens}`;
  const error = kind === 'rate' ? RATE : of;
  const find = (text: string) => (kind === 'rate' ? findRateUnit(text) : findUnit(text, ...families));
  return z
    .string({ error })
    .refine((text) => find(text) !== undefined, { error })
    .transform((text) => find(text)?.token ?? text);
};
