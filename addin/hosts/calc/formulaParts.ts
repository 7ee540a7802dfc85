import type { RawScalar } from '../../../functions';

/** A formula taken apart. */
export type Part =
  | { readonly kind: 'value'; readonly value: RawScalar }
  | { readonly kind: 'array'; readonly rows: readonly (readonly Part[])[] }
  /** Cells, as the formula spells them: Rig!$B$4, 'Round card'!A2:C9. */
  | { readonly kind: 'cells'; readonly reference: string }
  | { readonly kind: 'name'; readonly name: string }
  | { readonly kind: 'call'; readonly name: string; readonly args: readonly Part[] }
  | { readonly kind: 'negative' | 'percent'; readonly of: Part }
  | { readonly kind: 'joined'; readonly operator: string; readonly left: Part; readonly right: Part };

/** A part of the formula cannot be followed here, though it may be right; the message says which, and what to do. */
export class NotUnderstood extends Error {
  override readonly name = 'NotUnderstood';
}

const MOST_QUOTED = 40;

/** Calc's own marks before the names of younger functions are nothing to read. */
const MARK = /^_xlfn\.|^_xlws\./i;

/** @param part as the formula spells it */
export const notFollowed = (part: string, cause?: unknown): NotUnderstood =>
  new NotUnderstood(
    `The working is not told, because “${part.slice(0, MOST_QUOTED)}” cannot be followed here. Put it into a cell of its own to see the rest.`,
    { cause },
  );

const notAWholeColumn = (columns: string): NotUnderstood =>
  new NotUnderstood(
    `The working is not told, because “${columns}” is whole columns. Give the range an end to see the rest.`,
  );

const SHEET = String.raw`(?:'(?:[^']|'')+'|[\p{L}\p{N}_.]+)!`;
const CELL = String.raw`\$?[A-Z]{1,3}\$?\d+`;
const TOKENS: readonly (readonly [kind: string, pattern: RegExp])[] = [
  ['space', /\s+/uy],
  ['text', /"(?:[^"]|"")*"/uy],
  ['columns', new RegExp(`(?:${SHEET})?\\$?[A-Z]{1,3}:\\$?[A-Z]{1,3}(?![\\p{L}\\p{N}_.(])`, 'iuy')],
  ['cells', new RegExp(`(?:${SHEET})?${CELL}(?::${CELL})?(?![\\p{L}\\p{N}_.(])`, 'iuy')],
  ['error', /#(?:N\/A|[A-Z]+[!?]|DIV\/0!)/iuy],
  ['number', /(?:\d+\.?\d*|\.\d+)(?:E[+-]?\d+)?/iuy],
  ['word', /[\p{L}_][\p{L}\p{N}_.]*/uy],
  ['sign', /<=|>=|<>|[-+*/^&=<>%(),;{}]/uy],
];

interface Token {
  readonly kind: string;
  readonly text: string;
}

const tokensOf = (formula: string): Token[] => {
  const tokens: Token[] = [];
  for (let at = 0; at < formula.length;) {
    const found = TOKENS.map(([kind, pattern]) => {
      pattern.lastIndex = at;
      return { kind, text: pattern.exec(formula)?.[0] };
    }).find(({ text }) => text !== undefined);
    if (found?.text === undefined) throw notFollowed(formula.slice(at));
    if (found.kind !== 'space') tokens.push({ kind: found.kind, text: found.text });
    at += found.text.length;
  }
  return tokens;
};

/** From the loosest to the tightest. */
const LEVELS: readonly (readonly string[])[] = [
  ['=', '<', '>', '<=', '>=', '<>'],
  ['&'],
  ['+', '-'],
  ['*', '/'],
  ['^'],
];

/**
 * Takes a formula apart: English names, commas between arguments.
 *
 * @throws NotUnderstood for what it does not know, such as whole columns or unions of areas
 * @example partsOf('=FEED.DOSE(15,B2*2,"gal/min","gal")').kind // 'call'
 */
export const partsOf = (formula: string): Part => {
  const tokens = tokensOf(formula.replace(/^=/, ''));
  let at = 0;
  const sees = (text: string): boolean => tokens[at]?.kind === 'sign' && tokens[at]!.text === text;
  const takes = (text: string): boolean => (sees(text) ? ((at += 1), true) : false);
  const wants = (text: string): void => {
    if (!takes(text)) throw notFollowed(tokens[at]?.text ?? formula);
  };

  const listed = (until: string, between: string): Part[] => {
    const parts: Part[] = [];
    if (sees(until)) return parts;
    do {
      const leftOut = sees(between) || sees(until);
      parts.push(leftOut ? { kind: 'value', value: null } : level(0));
    } while (takes(between));
    return parts;
  };

  const array = (): Part => {
    const rows: Part[][] = [];
    do {
      const row: Part[] = [];
      do row.push(level(0));
      while (takes(','));
      rows.push(row);
    } while (takes(';'));
    wants('}');
    return { kind: 'array', rows };
  };

  const word = (text: string): Part => {
    if (takes('(')) {
      const args = listed(')', ',');
      wants(')');
      return { kind: 'call', name: text.replace(MARK, '').toUpperCase(), args };
    }
    if (/^(true|false)$/i.test(text)) return { kind: 'value', value: text.toLowerCase() === 'true' };
    return { kind: 'name', name: text };
  };

  const single = (): Part => {
    const token = tokens[at];
    if (token === undefined) throw notFollowed(formula);
    at += 1;
    switch (token.kind) {
      case 'text':
        return { kind: 'value', value: token.text.slice(1, -1).replaceAll('""', '"') };
      case 'number':
        return { kind: 'value', value: Number(token.text) };
      case 'error':
        return { kind: 'value', value: { error: token.text.toUpperCase() } };
      case 'cells':
        return { kind: 'cells', reference: token.text };
      case 'word':
        return word(token.text);
      case 'columns':
        throw notAWholeColumn(token.text);
    }
    if (token.text === '(') {
      const inside = level(0);
      wants(')');
      return inside;
    }
    if (token.text === '{') return array();
    if (token.text === '-') return { kind: 'negative', of: signed() };
    if (token.text === '+') return signed();
    throw notFollowed(token.text);
  };

  const signed = (): Part => {
    let part = single();
    while (takes('%')) part = { kind: 'percent', of: part };
    return part;
  };

  const level = (depth: number): Part => {
    const operators = LEVELS[depth];
    if (operators === undefined) return signed();
    let left = level(depth + 1);
    while (tokens[at]?.kind === 'sign' && operators.includes(tokens[at]!.text)) {
      const operator = tokens[at]!.text;
      at += 1;
      left = { kind: 'joined', operator, left, right: level(depth + 1) };
    }
    return left;
  };

  const whole = level(0);
  if (at < tokens.length) throw notFollowed(tokens[at]!.text);
  return whole;
};
