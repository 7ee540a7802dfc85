import { tokensOf, type Token } from './tokens';

const spelling = ({ kind, text }: Token): string => {
  if (kind === 'text') return text;
  return kind === 'number'
    ? String(Number(text))
    : text.replace(/^'([\p{L}\p{N}_.]+)'!/u, '$1!').toUpperCase();
};

const spellings = (formula: string, of: (token: Token) => string): string =>
  tokensOf(formula)
    .filter(({ kind }) => kind !== 'space')
    .map(of)
    .join('');

/** Two spellings of one formula: letter case, spaces, needless quotes around sheet names and zeros do not count. */
export const sameFormula = (a: string, b: string): boolean =>
  spellings(a, spelling) === spellings(b, spelling);

/** How far down a range reaches follows the length of the list. */
const butReach = (token: Token): string =>
  token.kind === 'cells' ? spelling(token).replace(/(:\$?[A-Z]+)\$?\d+$/, '$1') : spelling(token);

/** What is left of a reference whose cells were deleted; programs keep different parts of it. */
const LOST = String.raw`[^,()"=<>*/+&]*#REF![^,()"=<>*/+&-]*`;

const literally = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

/**
 * True where a cell's formula is the one that a template came to before rows were put in or cells that it reads were
 * deleted, and not one that the user wrote.
 */
export const cameOf = (now: string, template: string): boolean => {
  const left = (token: Token): string =>
    token.kind === 'cells' ? `(?:${literally(butReach(token))}|${LOST})` : literally(butReach(token));
  return new RegExp(`^${spellings(template, left)}$`, 'u').test(spellings(now, butReach));
};
