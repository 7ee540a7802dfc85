/** Letters that never make a word, a number or a cell's address. */
const LETTERS = 'bcdfghjklmnpqrstvwxz';
const LENGTH = 8;
const CELL_END = '\u0001';
const ROW_END = '\u0002';

/**
 * A short text that is another where any of the cells is another.
 *
 * Empty rows at the end, letter case and outer spaces do not count. Two lists that differ have the same text once in
 * some billions.
 *
 * Source: FNV-1a, 32 bit, G. Fowler, L. C. Noll, K.-P. Vo (IETF draft-eastlake-fnv), told in twenty letters; from
 * memory.
 *
 * @param rows what the cells say, '' for one that says nothing
 * @returns eight letters
 * @example fingerprint([['a']]) === fingerprint([[' A '], ['']]) // true
 */
export const fingerprint = (rows: readonly (readonly string[])[]): string => {
  const said = rows.map((cells) => cells.map((cell) => cell.trim().toLowerCase()).join(CELL_END));
  const last = said.findLastIndex((row) => row.replaceAll(CELL_END, '') !== '');
  let hash = 0x811c9dc5;
  for (const character of said.slice(0, last + 1).join(ROW_END)) {
    hash = Math.imul(hash ^ character.codePointAt(0)!, 0x01000193) >>> 0;
  }
  let told = '';
  for (let index = 0; index < LENGTH; index += 1) {
    told += LETTERS.charAt(hash % LETTERS.length);
    hash = Math.floor(hash / LETTERS.length);
  }
  return told;
};
