import type { ListCell } from './adoption';

const PLAIN = /^[!-~]+(?: [!-~]+)*$/;
const INVISIBLE = /[\p{Cf}\p{Cs}]/gu;
const SPACES = /[\s\p{Cc}]+/gu;
const MARKS = /\p{M}+/gu;
const ASCII = /^[ -~]*$/;
const SIGNS = /[™®©]/g;

/**
 * What a cell shows, as one clean line: no invisible characters, every run of spaces (no-break ones and line
 * breaks too) a single one. Text otherwise stays as it is, whatever it begins with.
 *
 * @returns '' for an empty cell or a number that is not finite
 * @example cellText('Front\u00a0 bed\n') // 'Front bed'
 */
export const cellText = (cell: ListCell | undefined): string => {
  if (cell === null || cell === undefined) return '';
  if (Number.isSafeInteger(cell)) return String(cell);
  if (typeof cell === 'number') return Number.isFinite(cell) ? String(Number(cell.toPrecision(12))) : '';
  if (typeof cell === 'boolean') return cell ? 'TRUE' : 'FALSE';
  if (PLAIN.test(cell)) return cell;
  return cell.normalize('NFC').replace(INVISIBLE, '').replace(SPACES, ' ').trim();
};

const lowered = (text: string): string =>
  ASCII.test(text)
    ? text.toLowerCase()
    : text.replace(SIGNS, '').normalize('NFKD').replace(MARKS, '').toLowerCase().replaceAll('ß', 'ss');

/**
 * A text as plain words: small letters, no accents, no punctuation; dots and apostrophes vanish, so that 'H.T.'
 * is 'ht'.
 *
 * @example wordsOf('Größe / No.') // 'grosse no'
 */
export const wordsOf = (text: string): string =>
  lowered(text)
    .replace(/[.'’‘`´]/g, '')
    .replaceAll('#', ' no ')
    .replaceAll('&', ' and ')
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();

/**
 * Two spellings of one name have the same key: letters and digits only, so that 'FRONT-BED' meets 'Front bed'.
 *
 * @example nameKey('Bed #3') // 'bed3'
 */
export const nameKey = (text: string): string =>
  lowered(text).replace(/[^\p{L}\p{N}]+/gu, '') || text.toLowerCase();

/**
 * Two spellings of one bed have the same key, with or without the word for it: 'front' and 'FRONT BED'.
 *
 * @example bedKey('Bed 3') // '3'
 */
export const bedKey = (text: string): string => {
  const words = wordsOf(text).replace(/^beds? | beds?$/g, '');
  return nameKey(words === '' ? text : words);
};

/** Reads each different text once; lists repeat the same few words thousands of times. */
export const remembered = <Reading>(read: (text: string) => Reading): ((text: string) => Reading) => {
  const known = new Map<string, Reading>();
  return (text) => {
    const before = known.get(text);
    if (before !== undefined || known.has(text)) return before as Reading;
    const reading = read(text);
    known.set(text, reading);
    return reading;
  };
};

/** 'text' in the quotation marks of the sentences, shortened to 60 characters. */
export const quoted = (text: string): string => `“${text.length > 60 ? `${text.slice(0, 59)}…` : text}”`;

/**
 * A column's letters as a spreadsheet shows them.
 *
 * @example columnLetters(26) // 'AA'
 */
export const columnLetters = (index: number): string =>
  (index >= 26 ? columnLetters(Math.floor(index / 26) - 1) : '') + String.fromCharCode(65 + (index % 26));
