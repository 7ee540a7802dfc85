import { looksLikeBed } from './bedNames';
import { nameKey, wordsOf } from './cellText';
import type { Heading } from './headings';
import type { ListColumns } from './listColumns';
import { readRoseWords } from './roseWords';
import { TOTAL_COMPANIONS, TOTAL_WORDS } from './words/countWords';
import { PIECE_WORDS } from './words/countWords';

export type RowKind = 'plants' | 'blank' | 'header' | 'otherList' | 'total' | 'section';

/** What is known of the list before a row is looked at. */
export interface ListHabits {
  readonly columns: ListColumns;
  /** Heading text by column. */
  readonly headings: ReadonlyMap<number, string>;
  readonly usualCells: number;
  /** True where the first row is a line of its own, so that such lines name beds. */
  readonly opensWithSection: boolean;
  /** `readHeading`, each text once. */
  readonly heading: (text: string) => Heading | undefined;
  /** True where blank lines part the list. */
  readonly hasBlankLines: boolean;
}

export interface RowInSight {
  /** Texts by column; covered cells of merges are ''. */
  readonly texts: readonly string[];
  /** Columns that are filled. */
  readonly filled: readonly number[];
  /** Columns that the first filled cell spans. */
  readonly span: number;
  /** True after a blank line, a total, or at the top. */
  readonly afterPause: boolean;
  /** True where the next row is filled as usual. */
  readonly beforeFullRow: boolean;
}

const TOTALS: ReadonlySet<string> = new Set(TOTAL_WORDS);
const HOLDS_TOTAL = new RegExp(TOTAL_WORDS.join('|'), 'i');
const BESIDE_TOTALS: ReadonlySet<string> = new Set([...TOTAL_WORDS, ...TOTAL_COMPANIONS, ...PIECE_WORDS]);
const LONGEST_LINE = 80;

/** 'Total', 'Grand total of roses: 350', 'Front bed total'; not a rose whose name begins with the word. */
export const isTotalLine = (text: string): boolean => {
  if (text.length > LONGEST_LINE || !HOLDS_TOTAL.test(text)) return false;
  const words = wordsOf(text).split(' ');
  const beside = (word: string) => BESIDE_TOTALS.has(word) || /^\d+$/.test(word);
  if (!words.some((word) => TOTALS.has(word))) return false;
  if (words.every(beside) || TOTALS.has(words.at(-1)!)) return true;
  return (
    TOTALS.has(words[0]!) &&
    looksLikeBed(
      words
        .slice(1)
        .filter((word) => !/^\d+$/.test(word))
        .join(' '),
    )
  );
};

const repeatsHeadings = ({ texts, filled }: RowInSight, habits: ListHabits): boolean => {
  const { headings, columns } = habits;
  if (headings.size === 0) return false;
  if (filled.every((column) => nameKey(texts[column]!) === nameKey(headings.get(column) ?? ''))) return true;
  if (filled.length < 2 || !columns.plant) return false;
  const meanings = {
    plant: columns.plant,
    bed: columns.bed,
    class: columns.class,
    size: columns.size,
    pot: columns.pot,
    count: columns.count,
  };
  return (
    filled.every((column) => {
      const heading = habits.heading(texts[column]!);
      if (!heading?.exact) return false;
      return Object.entries(meanings).every(
        ([meaning, guess]) =>
          guess?.index !== column || heading.weights[meaning as keyof typeof meanings] !== undefined,
      );
    }) && filled.includes(columns.plant.index)
  );
};

/** Headings of other columns in the middle of the sheet: another list begins there. */
const beginsOtherList = ({ texts, filled }: RowInSight, habits: ListHabits): boolean => {
  if (filled.length < 2 || filled.some((column) => /\d/.test(texts[column]!))) return false;
  let known = 0;
  let names = false;
  for (const column of filled) {
    const text = texts[column]!;
    const heading = habits.heading(text);
    if (heading?.exact) {
      known++;
      names ||= (heading.weights.plant ?? 0) >= 0.7;
    } else if (readRoseWords(text, 'class') || readRoseWords(text, 'size')) return false;
  }
  return names && known >= 2 && known * 3 >= filled.length * 2;
};

const namesBed = (row: RowInSight, habits: ListHabits): boolean => {
  const { texts, filled, span, afterPause, beforeFullRow } = row;
  const { columns, usualCells, opensWithSection, hasBlankLines } = habits;
  const column = filled[0]!;
  const text = texts[column]!;
  if (!/\p{L}/u.test(text) || text.length > LONGEST_LINE) return false;
  if (filled.length === 2)
    return (
      usualCells > 2 &&
      column === columns.plant?.index &&
      filled[1] === columns.count?.index &&
      looksLikeBed(text)
    );
  if (filled.length > 1) return false;
  if (span > 1 || text.endsWith(':') || looksLikeBed(text)) return true;
  if (columns.bed || usualCells < 2) return false;
  if (usualCells === 2) return afterPause && beforeFullRow;
  return afterPause || (opensWithSection && !hasBlankLines);
};

/**
 * What a row under the headings is: plants, or one of the lines that growers put between them.
 *
 * Totals by their words are told here; a bare number under the counts is told by the running sum (`readList`).
 */
export const rowKind = (row: RowInSight, habits: ListHabits): RowKind => {
  if (row.filled.length === 0) return 'blank';
  const plant = habits.columns.plant && row.texts[habits.columns.plant.index];
  const labels = plant ? [plant] : row.filled.map((column) => row.texts[column]!);
  if (labels.some(isTotalLine)) return 'total';
  if (repeatsHeadings(row, habits)) return 'header';
  if (beginsOtherList(row, habits)) return 'otherList';
  return namesBed(row, habits) ? 'section' : 'plants';
};
