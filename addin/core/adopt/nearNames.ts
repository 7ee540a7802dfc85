import { wordsOf } from './cellText';

/** Shorter words differ by a letter and mean another thing. */
const SHORTEST_WORD = 4;
const MOST_NAMES = 200;

/** One letter more, fewer or another, or two neighbours changed round; the first letter is seldom mistyped. */
const nearWords = (a: string, b: string): boolean => {
  if (a.length > b.length) return nearWords(b, a);
  if (a.length < SHORTEST_WORD || b.length - a.length > 1 || a[0] !== b[0] || /\d/.test(a + b)) return false;
  let at = 0;
  while (at < a.length && a[at] === b[at]) at++;
  if (a.length < b.length) return a.slice(at) === b.slice(at + 1);
  if (a.slice(at + 1) === b.slice(at + 1)) return true;
  return a[at] === b[at + 1] && a[at + 1] === b[at] && a.slice(at + 2) === b.slice(at + 2);
};

/** Whether two names differ by one slip in one word: 'Eest bed' and 'East bed', not 'West bed' and 'East bed'. */
const nearNames = (a: readonly string[], b: readonly string[]): boolean => {
  if (a.length !== b.length) return false;
  const slips = a.flatMap((word, at) => (word === b[at] ? [] : [[word, b[at]!] as const]));
  return slips.length === 1 && nearWords(...slips[0]!);
};

/**
 * The names that may be one name mistyped, the rarer before the one it is near to; of very many, none are compared.
 *
 * @param names each once, with how many rows have it
 */
export const nearPairs = (
  names: readonly { readonly name: string; readonly rows: number }[],
): readonly (readonly [rarer: string, name: string])[] => {
  if (names.length > MOST_NAMES) return [];
  const words = names.map(({ name }) => wordsOf(name).split(' '));
  return names.flatMap((one, at) =>
    names.flatMap((other, later) => {
      if (later <= at || !nearNames(words[at]!, words[later]!)) return [];
      return [one.rows < other.rows ? ([one.name, other.name] as const) : ([other.name, one.name] as const)];
    }),
  );
};
