import { wordsOf } from './cellText';
import { HEADING_WORDS, type HeadingMeaning } from './words/headingWords';

export type Weights = Readonly<Partial<Record<HeadingMeaning, number>>>;

export interface Heading {
  /** How strongly the heading points to each meaning, 0 to 1. */
  readonly weights: Weights;
  /** True where the whole text is a known heading, not only a part of it. */
  readonly exact: boolean;
}

const KNOWN: ReadonlyMap<string, Weights> = (() => {
  const known = new Map<string, Partial<Record<HeadingMeaning, number>>>();
  for (const { means, words } of HEADING_WORDS)
    for (const word of words) known.set(word, { ...known.get(word), ...means });
  return known;
})();

const LONGEST_HEADING = 60;
const MOST_WORDS = 6;
/** A known word inside a longer heading ('Bed / corner') is a weaker hint than the word alone. */
const INSIDE = 0.7;

const heavier = (a: Weights, b: Weights, share: number): Weights => {
  const joined: Partial<Record<HeadingMeaning, number>> = { ...a };
  for (const [meaning, weight] of Object.entries(b) as [HeadingMeaning, number][])
    joined[meaning] = Math.max(joined[meaning] ?? 0, weight * share);
  return joined;
};

const partsOf = (words: readonly string[]): Weights => {
  let weights: Weights = {};
  for (let at = 0; at < words.length;) {
    let span = Math.min(4, words.length - at);
    while (span > 0 && !KNOWN.has(words.slice(at, at + span).join(' '))) span--;
    if (span > 0) weights = heavier(weights, KNOWN.get(words.slice(at, at + span).join(' '))!, INSIDE);
    at += Math.max(1, span);
  }
  return weights;
};

/**
 * What a heading says about its column, by the words growers use.
 *
 * @returns undefined where no word is known
 * @example readHeading('Qty.') // { weights: { count: 1 }, exact: true }
 */
export const readHeading = (text: string): Heading | undefined => {
  if (text === '' || text.length > LONGEST_HEADING) return undefined;
  const phrase = wordsOf(text);
  const whole = KNOWN.get(phrase);
  if (whole) return { weights: whole, exact: true };
  const words = phrase.split(' ');
  if (words.length < 2 || words.length > MOST_WORDS || /\d/.test(phrase)) return undefined;
  const weights = partsOf(words);
  return Object.keys(weights).length === 0 ? undefined : { weights, exact: false };
};

/** The strongest meaning of a heading and its weight. */
export const strongest = (heading: Heading): readonly [HeadingMeaning, number] =>
  (Object.entries(heading.weights) as [HeadingMeaning, number][]).reduce((best, next) =>
    next[1] > best[1] ? next : best,
  );
