import type { Refused } from './definition';

/** A cell of the wrong kind or out of its range. */
export const wrong = (sentence: string): Refused => ({ error: '#VALUE!', sentence });

/** Something that is not known: a unit, a nutrient, too few readings. */
export const unknown = (sentence: string): Refused => ({ error: '#N/A', sentence });

const LONGEST_QUOTE = 40;

/** A given argument in words that fit into a sentence. */
export const told = (given: unknown): string => {
  if (given === null || given === undefined || given === '') return 'nothing';
  if (typeof given === 'number') return Number.isNaN(given) ? 'no number' : String(given);
  if (typeof given === 'boolean') return given ? 'TRUE' : 'FALSE';
  if (typeof given === 'string') {
    const text = given.length > LONGEST_QUOTE ? `${given.slice(0, LONGEST_QUOTE)}…` : given;
    return `"${text}"`;
  }
  if (Array.isArray(given)) {
    const columns: unknown = given[0];
    return Array.isArray(columns) ? `a range of ${given.length} × ${columns.length} cells` : 'a list';
  }
  return 'something that is no number and no text';
};

const list = (words: readonly string[]): string => words.join(', ');

export const notAllowed = (name: string, given: unknown, allowed: string): Refused =>
  wrong(`${name}: ${told(given)} was given; use ${allowed}.`);

export const notANumber = (name: string, given: unknown, allowed: string): Refused => {
  const kind = typeof given === 'string' ? 'the text ' : '';
  const asNumber = allowed === 'any number' ? 'a number' : `a number, ${allowed}`;
  return wrong(`${name}: ${kind}${told(given)} was given; use ${asNumber}.`);
};

export const oneValueOnly = (name: string, given: unknown): Refused =>
  wrong(`${name}: ${told(given)} was given; use one cell or one value.`);

export const unknownUnit = (name: string, given: string, kind: string, known: readonly string[]): Refused =>
  unknown(`${name}: ${told(given)} is not a known ${kind} unit; use ${list(known)}.`);

export const unknownRate = (
  name: string,
  given: string,
  amounts: readonly string[],
  volumes: readonly string[],
): Refused =>
  unknown(
    `${name}: ${told(given)} is not a known rate unit; use an amount over a volume, such as tbsp/gal or ` +
      `oz/100 gal. Known amounts are ${list(amounts)}; known volumes are ${list(volumes)}.`,
  );

export const unknownAnyUnit = (name: string, given: string, known: readonly string[]): Refused =>
  unknown(
    `${name}: ${told(given)} is not a known unit; use ${list(known)}, or a rate such as tbsp/gal or oz/100 gal.`,
  );

export const unknownName = (name: string, given: string, kind: string, known: readonly string[]): Refused =>
  unknown(`${name}: ${told(given)} is not a known ${kind}; use ${list(known)}.`);

export const doesNotConvert = (name: string, given: string, from: string, allowed: string): Refused =>
  wrong(`${name}: ${told(given)} was given and does not convert from ${told(from)}; use ${allowed}.`);

export const densityMissing = (from: string, to: string): Refused =>
  wrong(
    `density: nothing was given, and ${from} to ${to} goes between volume and mass; ` +
      'use the grams that one millilitre of the product weighs, more than 0.',
  );

export const coldestPassed = (given: number, coldest: string): Refused =>
  wrong(`value: ${told(given)} was given; use a temperature of ${coldest} or more.`);

export const underFinest = (given: string, least: string): Refused =>
  wrong(`amount: ${given} was given; use ${least} or more, half of the finest measure.`);

export const notMeasurable = (name: string, given: string, allowed: string): Refused =>
  wrong(`${name}: ${given} was given, less than the finest measure; use ${allowed}.`);

export const unknownInList = (name: string, given: string): Refused =>
  unknown(`${name}: ${told(given)} is not in the list; use a name that is.`);

export const standsTwice = (name: string, given: string, first: number, second: number): Refused =>
  wrong(
    `${name}: ${told(given)} was given, which stands in cells ${first} and ${second}; use a name that is there once.`,
  );

export const tooManySteps = (name: string, given: string, allowed: string): Refused =>
  wrong(`${name}: ${given} was given; use ${allowed}.`);

export const heelTooHigh = (given: string, filled: string): Refused =>
  wrong(`heel: ${given} was given; use less than barrel × fill_line, which is ${filled}.`);

export const tooManyFills = (given: string, most: number): Refused =>
  wrong(
    `need: ${given} was given, which takes more than ${most} fills; use a smaller need or a larger barrel, ` +
      `for ${most} fills at most.`,
  );

export const lostInArithmetic = (name: string, given: string): Refused =>
  wrong(`${name}: ${given} was given, which arithmetic cannot tell from 0; use numbers of an ordinary size.`);

export const tooManyRepeats = (percent: number, spread: string, most: number): Refused =>
  unknown(
    `percent: ${told(percent)} was given; with a spread of ${spread} even ${most} timed buckets do not reach it. ` +
      'Use a greater percent, or steadier readings.',
  );

export const unlikeRanges = (first: string, given: unknown, second: string, other: unknown): Refused =>
  wrong(`${second}: ${told(other)} was given and ${first} is ${told(given)}; use two ranges of one shape.`);

export const cellOf = (name: string, row: number, column: number): string =>
  `${name} (row ${row + 1}, column ${column + 1})`;

export const tooFewReadings = (name: string, found: number, wanted: string): Refused =>
  unknown(`${name}: ${found === 0 ? 'no reading' : '1 reading'} was given; use ${wanted}.`);

export const tooManyArguments = (name: string, most: number, found: number): Refused =>
  wrong(`${name}: ${found} arguments were given; use ${most === 1 ? 'one' : `${most} at most`}.`);

export const outOfReach = (name: string, given: unknown): Refused =>
  wrong(
    `${name}: ${told(given)} was given, which takes the result beyond what a cell can hold; use numbers of an ordinary size.`,
  );

export const noSuchFunction = (given: unknown, known: readonly string[]): Refused => ({
  error: '#NAME?',
  sentence:
    typeof given === 'string'
      ? `${told(given)} is not a function of this program; the functions are ${list(known)}.`
      : `The name of a function is a text; the functions are ${list(known)}.`,
});

export const argumentsNotAList = (given: unknown): Refused =>
  wrong(`arguments: ${told(given)} was given; use a list with one entry for each argument.`);

export const couldNotCompute = (name: string, reason: string): Refused =>
  wrong(`${name} could not be computed from these arguments (${reason}); use numbers of an ordinary size.`);
