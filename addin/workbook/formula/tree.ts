import { tokensOf, type Token } from './tokens';

/** A formula taken apart. */
export type Part =
  /** A number, a text, a truth value, an error, or an argument that is left out. */
  | { readonly kind: 'value'; readonly value: number | string | boolean | null | { readonly error: string } }
  | { readonly kind: 'array'; readonly rows: readonly (readonly Part[])[] }
  /** Cells, whole columns or rows, or a name, as the formula spells them: Rig!$B$4. */
  | { readonly kind: 'read'; readonly text: string }
  | { readonly kind: 'call'; readonly name: string; readonly args: readonly Part[] }
  | { readonly kind: 'negative' | 'percent'; readonly of: Part }
  | { readonly kind: 'joined'; readonly operator: string; readonly left: Part; readonly right: Part };

/** Marks that files keep before the names of younger functions. */
const MARK = /^_xlfn\.|^_xlws\./i;

/** From the loosest to the tightest. */
const LEVELS: readonly (readonly string[])[] = [
  ['=', '<', '>', '<=', '>=', '<>'],
  ['&'],
  ['+', '-'],
  ['*', '/'],
  ['^'],
];

class NotKnown extends Error {}

const parse = (tokens: readonly Token[]): Part => {
  let at = 0;
  const sees = (text: string): boolean => tokens[at]?.kind === 'sign' && tokens[at]!.text === text;
  const takes = (text: string): boolean => (sees(text) ? ((at += 1), true) : false);
  const wants = (text: string): void => {
    if (!takes(text)) throw new NotKnown();
  };

  const args = (): Part[] => {
    const parts: Part[] = [];
    wants('(');
    if (takes(')')) return parts;
    do parts.push(sees(',') || sees(')') ? { kind: 'value', value: null } : level(0));
    while (takes(','));
    wants(')');
    return parts;
  };

  const row = (): Part[] => {
    const parts = [level(0)];
    while (takes(',')) parts.push(level(0));
    return parts;
  };
  const array = (): Part => {
    const rows = [row()];
    while (takes(';')) rows.push(row());
    wants('}');
    return { kind: 'array', rows };
  };

  const single = (): Part => {
    const token = tokens[at];
    at += 1;
    switch (token?.kind) {
      case 'text':
        return { kind: 'value', value: token.text.slice(1, -1).replaceAll('""', '"') };
      case 'number':
        return { kind: 'value', value: Number(token.text) };
      case 'error':
        return { kind: 'value', value: { error: token.text.toUpperCase() } };
      case 'name':
        if (/^(true|false)$/i.test(token.text))
          return { kind: 'value', value: token.text.toLowerCase() === 'true' };
        return { kind: 'read', text: token.text };
      case 'cells':
      case 'columns':
      case 'rows':
        return { kind: 'read', text: token.text };
      case 'function':
        return { kind: 'call', name: token.text.replace(MARK, '').toUpperCase(), args: args() };
      case 'sign':
        if (token.text === '-') return { kind: 'negative', of: signed() };
        if (token.text === '+') return signed();
        if (token.text === '{') return array();
        if (token.text === '(') {
          const inside = level(0);
          wants(')');
          return inside;
        }
    }
    throw new NotKnown();
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
    for (
      let token = tokens[at];
      token?.kind === 'sign' && operators.includes(token.text);
      token = tokens[at]
    ) {
      at += 1;
      left = { kind: 'joined', operator: token.text, left, right: level(depth + 1) };
    }
    return left;
  };

  const whole = level(0);
  if (at < tokens.length) throw new NotKnown();
  return whole;
};

/**
 * A formula taken apart, with its operators in the order in which a spreadsheet applies them.
 *
 * @param formula English names, commas
 * @returns undefined where a part of it is not known here, such as a union of areas; that is no fault of the formula
 * @example treeOf('=FEED.DOSE(15,B2*2,"gal/min","gal")')?.kind // 'call'
 */
export const treeOf = (formula: string): Part | undefined => {
  try {
    return parse(tokensOf(formula.replace(/^=/, '')).filter(({ kind }) => kind !== 'space'));
  } catch (error) {
    if (error instanceof NotKnown) return undefined;
    throw error;
  }
};
