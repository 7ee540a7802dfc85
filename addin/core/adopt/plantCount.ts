import type { ListCell } from './adoption';
import { cellText, quoted, wordsOf } from './cellText';
import { ABOUT_WORDS, NUMBER_WORDS, PIECE_WORDS } from './words/countWords';

/** More in one row is a year, a label number or a slip of the keyboard. */
export const MOST_PLANTS_IN_A_ROW = 10_000;

export type CountReading =
  | { readonly count: number; readonly approximate: boolean }
  /** The end of a sentence about the row. */
  | { readonly unread: string };

const PIECES: ReadonlySet<string> = new Set(PIECE_WORDS);
const ABOUT: ReadonlySet<string> = new Set(ABOUT_WORDS);
const TIMES = /^[x×*]\s*(?=\d)|(?<=\d)\s*[x×*]$/;

const whole = (digits: string): number | undefined => {
  const plain = /^\d{1,3}(,\d{3})+$/.test(digits)
    ? digits.replaceAll(',', '')
    : digits.replace(/[.,]0{1,2}$/, '');
  return /^\d{1,9}$/.test(plain) ? Number(plain) : undefined;
};

/** One part of a sum: '3', 'x3', '3 plants', 'three'. */
const partOf = (text: string): number | undefined => {
  const bare = text.trim().replace(TIMES, '').trim();
  const plain = whole(bare);
  if (plain !== undefined) return plain;
  if (/[^\p{L}\p{M}\p{N} .,'()]/u.test(bare)) return undefined;
  const words = wordsOf(bare.replace(/(\d)(\p{L})/gu, '$1 $2')).split(' ');
  const telling = words.filter((word) => !PIECES.has(word));
  if (telling.length === 0) return undefined;
  const numbers = telling.map((word) => (/^\d+$/.test(word) ? whole(word) : NUMBER_WORDS.get(word)));
  // 'a pair', 'a dozen', '2 dozen': an article or a number before a measure of pieces multiplies.
  if (numbers.some((number) => number === undefined)) return undefined;
  if (numbers.length === 1) return numbers[0];
  return numbers.length === 2 && /^(dozen|pair|douzaine|docena|dozijn|dozzina)$/.test(telling[1]!)
    ? numbers[0]! * numbers[1]!
    : undefined;
};

const checked = (count: number, shown: string, approximate: boolean): CountReading => {
  if (!Number.isInteger(count)) return { unread: `${shown} is not a whole number of plants` };
  if (count < 1) return { unread: `${shown} is given as the number of plants; a row needs at least 1` };
  if (count > MOST_PLANTS_IN_A_ROW)
    return {
      unread: `${shown} plants in one row are more than ${MOST_PLANTS_IN_A_ROW.toLocaleString('en-US')}`,
    };
  return { count, approximate };
};

/**
 * How many plants a cell says: a blank is 1; '3', 'x3', '3 plants', 'three', 'a pair', '2 + 1' and, as
 * approximate, '~5', 'ca. 5', '5?' are read.
 *
 * @returns `unread` with the reason for 0, negative, broken, above 10,000, a range, or text
 * @example readCount('2 + 1') // { count: 3, approximate: false }
 */
export const readCount = (cell: ListCell | undefined): CountReading => {
  if (typeof cell === 'number' && Number.isFinite(cell)) return checked(cell, quoted(cellText(cell)), false);
  const shown = cellText(cell);
  if (shown === '') return { count: 1, approximate: false };
  if (shown.length > 60) return { unread: `${quoted(shown)} is not a number of plants` };
  const text = shown.normalize('NFKC').toLowerCase();
  if (/^[-−–]\s*\d/.test(text))
    return { unread: `${quoted(shown)} is given as the number of plants; a row needs at least 1` };
  if (/^\d+[.,]\d+$/.test(text) && whole(text) === undefined)
    return { unread: `${quoted(shown)} is not a whole number of plants` };
  const words = text.replace(/^[~≈]\s*/, '').replace(/\s*\?$/, '');
  const [first = '', ...rest] = words.split(' ');
  const about = rest.length > 0 && ABOUT.has(wordsOf(first));
  const certain = about ? rest.join(' ') : words;
  const parts = certain.split(/\+|&|\band\b/).map(partOf);
  if (parts.some((part) => part === undefined))
    return { unread: `${quoted(shown)} is not a number of plants` };
  const count = parts.reduce<number>((sum, part) => sum + part!, 0);
  return checked(count, quoted(shown), about || words !== text);
};
