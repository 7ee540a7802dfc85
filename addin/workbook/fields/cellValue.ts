import * as z from 'zod';
import { findRateUnit, findUnit, knownUnits, type Family } from '../../core';

/**
 * What a cell may hold. The message of each schema says what is allowed, as the end of "…; use ___.": the place and
 * what was given are put before it by `cellSentence`.
 */

const trimmed = (value: unknown): unknown => (typeof value === 'string' ? value.trim() : value);
const blank = (value: unknown): boolean => value === null || value === undefined || trimmed(value) === '';

/** The same cell, which may also be blank; a blank one comes to undefined. */
export const optional = <T>(schema: z.ZodType<T>): z.ZodType<T | undefined> =>
  z.preprocess((value) => (blank(value) ? undefined : value), schema.optional());

export interface NumberRange {
  readonly above?: number;
  readonly least?: number;
  readonly most?: number;
  readonly whole?: boolean;
}

const rangeWords = ({ above, least, most, whole }: NumberRange): string => {
  const number = whole ? 'a whole number' : 'a number';
  if (above !== undefined) return `${number} above ${above}${most === undefined ? '' : `, up to ${most}`}`;
  if (least !== undefined && most !== undefined) return `${number} from ${least} to ${most}`;
  if (least !== undefined) return `${number} of ${least} or more`;
  return number;
};

/** A number; text that looks like one is text and is refused, as in the worksheet functions. */
export const numberCell = (range: NumberRange, words = rangeWords(range)): z.ZodType<number> => {
  const { above = -Infinity, least = -Infinity, most = Infinity, whole = false } = range;
  return z
    .number({ error: words })
    .refine((n) => n > above && n >= least && n <= most && (!whole || Number.isInteger(n)), { error: words });
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

/** A unit of one family, told by its token. */
export const unitCell = (family: Family): z.ZodType<string> => {
  const words = `one of ${knownUnits(family).join(', ')}`;
  return z
    .string({ error: words })
    .refine((text) => findUnit(text)?.family === family, { error: words })
    .transform((text) => findUnit(text)?.token ?? text);
};

/** A unit that a pack is sold in: a volume or a mass. */
export const packUnitCell: z.ZodType<string> = (() => {
  const words = `a unit of volume or mass: ${[...knownUnits('volume'), ...knownUnits('mass')].join(', ')}`;
  const fits = (text: string) => ['volume', 'mass'].includes(findUnit(text)?.family ?? '');
  return z
    .string({ error: words })
    .refine(fits, { error: words })
    .transform((text) => findUnit(text)?.token ?? text);
})();

/** An amount for a volume, as labels print it. */
export const rateUnitCell: z.ZodType<string> = (() => {
  const words = 'a rate as labels print it, such as tbsp/gal, mL/L or oz/100 gal';
  return z
    .string({ error: words })
    .refine((text) => findRateUnit(text) !== undefined, { error: words })
    .transform((text) => findRateUnit(text)?.token ?? text);
})();
