/** Texts in double quotes and names of sheets in single ones stand at the odd places of a formula that is split by it. */
const QUOTED = /("(?:[^"]|"")*"|'(?:[^']|'')*')/;

/**
 * A formula with a change made to all of it but its texts and its quoted names of sheets.
 *
 * @example outsideQuotes('=a&"a"', (part) => part.toUpperCase()) // '=A&"a"'
 */
export const outsideQuotes = (formula: string, change: (part: string) => string): string =>
  formula
    .split(QUOTED)
    .map((part, index) => (index % 2 === 1 ? part : change(part)))
    .join('');
