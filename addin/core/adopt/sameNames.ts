import type { WordReading } from './adoption';

/** The names of a column by number: spellings of one name have the same number. */
export interface SameNames {
  /** Number of the name in each row, from 0. */
  readonly numbers: readonly number[];
  /** The spelling that stands first, by number. */
  readonly first: readonly string[];
}

/**
 * Numbers names in the order in which they first appear.
 *
 * @param keyOf what two spellings of one name have in common
 */
export const sameNames = (names: readonly string[], keyOf: (text: string) => string): SameNames => {
  const byText = new Map<string, number>();
  const byKey = new Map<string, number>();
  const first: string[] = [];
  const numbers = names.map((text) => {
    const known = byText.get(text);
    if (known !== undefined) return known;
    const key = keyOf(text);
    const number = byKey.get(key) ?? first.push(text) - 1;
    byKey.set(key, number);
    byText.set(text, number);
    return number;
  });
  return { numbers, first };
};

/** Names that stand in several spellings. */
export const severalSpellings = (
  meaning: 'plant' | 'bed',
  names: readonly string[],
  { numbers, first }: SameNames,
): readonly WordReading[] => {
  const spellings = new Map<number, Set<string>>();
  names.forEach((text, row) => {
    const number = numbers[row]!;
    if (text !== first[number])
      spellings.set(number, (spellings.get(number) ?? new Set([first[number]!])).add(text));
  });
  const rows = new Map<number, number>();
  for (const number of numbers) if (spellings.has(number)) rows.set(number, (rows.get(number) ?? 0) + 1);
  return [...spellings].map(([number, texts]) => ({
    meaning,
    reading: first[number]!,
    texts: [...texts],
    rows: rows.get(number)!,
  }));
};
