/** A piece of a formula as it is spelled; cells, whole columns, whole rows and names with their sheet before them. */
export interface Token {
  readonly kind: (typeof KINDS)[number];
  readonly text: string;
}

const LETTER = String.raw`[\p{L}\p{N}_.]`;
/** Of another file, where a file's name or number stands before it. */
const SHEET = String.raw`(?:(?:'(?:[^']|'')+'|(?:\[[^[\]]*\])?[\p{L}_]${LETTER}*)!)?`;
const CELL = String.raw`\$?[A-Z]{1,3}\$?\d{1,7}`;
const ENDS = String.raw`(?!${LETTER}|\s*\(|!)`;

const KINDS = [
  'sign',
  'space',
  'text',
  'cells',
  'columns',
  'rows',
  'function',
  'name',
  'number',
  'error',
  'other',
] as const;

/** A group for each kind, in the same order. */
const PATTERN = new RegExp(
  [
    '(<=|>=|<>|[-+*/^&=<>%(),;{}])',
    String.raw`(\s+)`,
    '("(?:[^"]|"")*")',
    `${SHEET}(?:${[
      `(${CELL}(?::${CELL})?${ENDS})`,
      String.raw`(\$?[A-Z]{1,3}:\$?[A-Z]{1,3}${ENDS})`,
      String.raw`(\$?\d+:\$?\d+${ENDS})`,
      String.raw`([\p{L}_]${LETTER}*(?=\s*\())`,
      String.raw`([\p{L}_]${LETTER}*(?!!))`,
    ].join('|')})`,
    String.raw`((?:\d+\.?\d*|\.\d+)(?:E[+-]?\d+)?)`,
    String.raw`(#(?:N\/A|DIV\/0!|[A-Z]+[!?]))`,
    '([^])',
  ].join('|'),
  'iuy',
);

/**
 * Reads a formula piece by piece. Nothing of it is lost, and nothing is refused: what is not known is `other`.
 *
 * @param formula English names, commas, Sheet!A1
 * @example tokensOf('=Rig!B4*2').map(({ kind }) => kind) // ['sign', 'cells', 'sign', 'number']
 */
export const tokensOf = (formula: string): Token[] => {
  const tokens: Token[] = [];
  PATTERN.lastIndex = 0;
  for (let found = PATTERN.exec(formula); found; found = PATTERN.exec(formula)) {
    let at = 0;
    while (found[at + 1] === undefined) at += 1;
    tokens.push({ kind: KINDS[at]!, text: found[0] });
  }
  return tokens;
};

/** A formula with some of its pieces spelled anew. */
export const respelled = (
  formula: string,
  spell: (token: Token, at: number, all: readonly Token[]) => string,
): string => tokensOf(formula).map(spell).join('');
