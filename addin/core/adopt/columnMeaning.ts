import type { ColumnGuess, Meaning } from './adoption';
import { quoted, wordsOf } from './cellText';
import type { ColumnContent } from './columnContent';
import { readHeading, type Weights } from './headings';
import { DAY_WORDS } from './words/headingWords';

/** A column with its stacked headings, from the top. */
export interface ListColumn {
  readonly index: number;
  readonly headings: readonly string[];
  readonly content: ColumnContent;
}

type Guessed = Exclude<Meaning, 'notes' | 'leftOut'>;
const GUESSED: readonly Guessed[] = ['plant', 'bed', 'class', 'size', 'pot', 'count'];

const LEAST_CONFIDENCE = 0.3;
const BY_HEADING = 0.6;
const DAYS: ReadonlySet<string> = new Set(DAY_WORDS);

const SAYS: Readonly<Record<Guessed, string>> = {
  plant: 'names the plant',
  bed: 'names the bed',
  class: 'names the class',
  size: 'names the size',
  pot: 'says pot or ground',
  count: 'says how many',
};
const LOOKS: Readonly<Record<Guessed, string>> = {
  plant: 'its values look like names of plants: text, nearly all different',
  bed: 'its values look like beds: a few names that come again and again',
  class: 'its values are words for classes',
  size: 'its values are words for sizes',
  pot: 'its values say pot or ground',
  count: 'its values are small whole numbers',
};

/** How well the values alone fit each meaning, 0 to 1. */
const fitOf = (content: ColumnContent): Readonly<Record<Guessed, number>> => {
  const words = Math.max(content.classWords, content.sizeWords, content.potWords);
  const names = content.text * (1 - words) * (1 - content.years);
  const again = 1 - content.distinct;
  return {
    plant: names * (0.3 + 0.7 * content.distinct) * (1 - content.bedWords) * content.filled,
    bed:
      Math.max(content.bedWords, again * names * 0.6, again * content.marks * (1 - words) * 0.6) *
      Math.min(1, content.filled * 2),
    class: content.classWords,
    size: content.sizeWords,
    pot: content.potWords,
    count: content.countsLines ? 0 : content.counts * (1 - content.years),
  };
};

/** The lowest of stacked headings is the nearest to the values and counts before the joined ones. */
const weightsOf = (headings: readonly string[]): Weights => {
  const joined = readHeading(headings.join(' '));
  if (joined?.exact) return joined.weights;
  for (const heading of [...headings].reverse()) {
    const read = readHeading(heading);
    if (read) return read.weights;
  }
  return joined?.weights ?? {};
};

const numbersTheLines = (column: ListColumn, weights: Weights): boolean => {
  const named = weights.line !== undefined || Object.keys(weights).length === 0;
  return weights.line === 1 || (named && column.content.countsLines);
};

interface Fit {
  readonly column: ListColumn;
  readonly meaning: Guessed;
  readonly score: number;
  readonly byHeading: boolean;
}

const fitsOf = (column: ListColumn): readonly Fit[] => {
  const weights = weightsOf(column.headings);
  if (numbersTheLines(column, weights)) return [];
  const fit = fitOf(column.content);
  const headingKnown = Object.keys(weights).length > 0;
  const headed = column.headings.length > 0;
  return GUESSED.map((meaning): Fit => {
    const weight = weights[meaning];
    if (weight !== undefined) {
      const denied = column.content.filled > 0 && meaning === 'count' && fit.count === 0 ? 0.5 : 1;
      return {
        column,
        meaning,
        byHeading: true,
        score: weight * (BY_HEADING + (1 - BY_HEADING) * fit[meaning]) * denied,
      };
    }
    const fixed = meaning === 'class' || meaning === 'size' || meaning === 'pot';
    const trust = headingKnown ? (fixed ? 0.35 : 0) : headed ? 0.6 : 0.8;
    return { column, meaning, byHeading: false, score: fit[meaning] * trust };
  });
};

/** Same answer in whatever order the columns stand: equal scores are settled by heading and first value. */
const byScore = (a: Fit, b: Fit): number =>
  b.score - a.score ||
  (nameOf(a.column) < nameOf(b.column) ? -1 : nameOf(a.column) > nameOf(b.column) ? 1 : 0);
const nameOf = (column: ListColumn): string => [...column.headings, ...column.content.samples].join('|');

const restOf = (column: ListColumn): readonly [Meaning, number, string] => {
  const weights = weightsOf(column.headings);
  if (numbersTheLines(column, weights)) return ['leftOut', 0.8, 'it numbers the lines'];
  if (weights.notes) return ['notes', 1, `the heading ${quoted(column.headings.join(' '))} holds notes`];
  const heading = column.headings.join(' ');
  return ['notes', 0.5, heading ? `kept as a note under ${quoted(heading)}` : 'kept as a note'];
};

/**
 * Guesses what each column means by its heading and its values; each of plant, bed, class, size, pot and count is
 * given to one column at most, the user's choices first.
 */
export const guessColumns = (
  columns: readonly ListColumn[],
  chosen: Readonly<Record<number, Meaning>>,
): readonly ColumnGuess[] => {
  const taken = new Map<ListColumn, readonly [Meaning, number, string]>();
  const given = new Set<Meaning>();
  for (const column of columns) {
    const meaning = chosen[column.index];
    if (!meaning) continue;
    taken.set(column, [meaning, 1, 'you chose it']);
    given.add(meaning);
  }
  const fits = columns.flatMap(fitsOf).filter((fit) => fit.score >= LEAST_CONFIDENCE);
  for (const { column, meaning, score, byHeading } of fits.sort(byScore)) {
    if (taken.has(column) || given.has(meaning)) continue;
    const reason = byHeading
      ? `the heading ${quoted(column.headings.join(' '))} ${SAYS[meaning]}`
      : LOOKS[meaning];
    taken.set(column, [meaning, score, reason]);
    given.add(meaning);
  }
  return columns.map((column): ColumnGuess => {
    const [meaning, confidence, reason] = taken.get(column) ?? restOf(column);
    const header = column.headings.join(' ');
    const words = column.headings.map(wordsOf);
    return {
      index: column.index,
      header,
      meaning,
      confidence: Math.round(Math.min(1, confidence) * 100) / 100,
      reason,
      samples: column.content.samples,
      days: column.content.days === 1 && words.some((word) => DAYS.has(word)),
    };
  });
};
