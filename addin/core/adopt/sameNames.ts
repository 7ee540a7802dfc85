import type { WordReading } from './adoption';

/** The names of a column by number: spellings of one name have the same number. */
export interface SameNames {
  /** Number of the name in each row, from 0. */
  readonly numbers: readonly number[];
  /** The spelling that is kept, by number: the one used most, the first of equals. */
  readonly kept: readonly string[];
}

/**
 * Numbers names in the order in which they first appear.
 *
 * @param keyOf what two spellings of one name have in common
 */
export const sameNames = (names: readonly string[], keyOf: (text: string) => string): SameNames => {
  const spellings = new Map<string, { readonly number: number; rows: number }>();
  const byKey = new Map<string, number>();
  const numbers = names.map((text) => {
    const known = spellings.get(text);
    if (known) {
      known.rows++;
      return known.number;
    }
    const key = keyOf(text);
    const number = byKey.get(key) ?? byKey.size;
    byKey.set(key, number);
    spellings.set(text, { number, rows: 1 });
    return number;
  });
  const kept: string[] = [];
  const most: number[] = [];
  for (const [text, { number, rows }] of spellings) {
    if (rows <= (most[number] ?? 0)) continue;
    most[number] = rows;
    kept[number] = text;
  }
  return { numbers, kept };
};

/** Names that stand in several spellings. */
export const severalSpellings = (
  meaning: 'plant' | 'bed',
  names: readonly string[],
  { numbers, kept }: SameNames,
): readonly WordReading[] => {
  const spellings = new Map<number, Set<string>>();
  names.forEach((text, row) => {
    const number = numbers[row]!;
    if (text !== kept[number])
      spellings.set(number, (spellings.get(number) ?? new Set([kept[number]!])).add(text));
  });
  const rows = new Map<number, number>();
  for (const number of numbers) if (spellings.has(number)) rows.set(number, (rows.get(number) ?? 0) + 1);
  return [...spellings].map(([number, texts]) => ({
    meaning,
    reading: kept[number]!,
    texts: [...texts],
    rows: rows.get(number)!,
  }));
};
