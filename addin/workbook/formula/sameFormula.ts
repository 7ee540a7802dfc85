import { tokensOf } from './tokens';

const plain = (formula: string): string =>
  tokensOf(formula)
    .map(({ kind, text }) => {
      if (kind === 'space') return '';
      return kind === 'text' ? text : text.replace(/^'([\p{L}\p{N}_.]+)'!/u, '$1!').toUpperCase();
    })
    .join('');

/** Two spellings of one formula: letter case, spaces and needless quotes around sheet names do not count. */
export const sameFormula = (a: string, b: string): boolean => plain(a) === plain(b);
