import { wordsOf } from './cellText';
import { BED_WORDS } from './words/bedWords';

const BEDS: ReadonlySet<string> = new Set(BED_WORDS);

/**
 * Whether a text reads like the name of a bed: it ends in a word for one ('Front border', 'Patio pots', 'Row 3')
 * or begins with one and a number or letter ('Bed A').
 */
export const looksLikeBed = (text: string): boolean => {
  if (text.length > 60) return false;
  const words = wordsOf(text).split(' ');
  if (words.length > 5) return false;
  const last = words.at(-1)!;
  if (BEDS.has(last)) return true;
  const numbered = /^(\d{1,3}|[a-z]|[ivx]{1,4})$/.test(last) && words.length > 1;
  return numbered && (BEDS.has(words[0]!) || BEDS.has(words.at(-2)!));
};

/** A bed's name without what stands around it on a line of its own: 'Bed: Front', 'FRONT BED:', '--- Patio ---'. */
export const bedNameFrom = (text: string): string => {
  const bare = text.replace(/^[\s\-–—=*_#:]+|[\s\-–—=*_:]+$/gu, '');
  const labelled = /^(?:bed|location|beet|massif|perk|aiuola|arriate)\s*:\s*(.+)$/iu.exec(bare);
  return labelled?.[1] ?? (bare || text);
};
