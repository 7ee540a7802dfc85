const WHOLE_AND_PART = /^(?:(\d+)[ -]+)?(\d+)\s*\/\s*(\d+)$/;
const DECIMAL = /^(?:\d+(?:\.\d*)?|\.\d+)$/;
// A comma before exactly three digits may part thousands or decimals: nobody can tell, so it is asked.
const COMMA_DECIMAL = /^\d*,(?:\d{1,2}|\d{4,})$/;
const GLYPHS: Readonly<Record<string, string>> = {
  '¼': '1/4',
  '½': '1/2',
  '¾': '3/4',
  '⅓': '1/3',
  '⅔': '2/3',
};

/**
 * The number that a person typed: 2.5, .5, 2,5, 3/4, 1 1/2 or 1½; 0 or more.
 *
 * @returns undefined for anything else, 1,000 included
 * @example readNumber('1 1/2') // 1.5
 */
export const readNumber = (typed: string): number | undefined => {
  const text = typed
    .trim()
    .replace(/\s*[¼½¾⅓⅔]/g, (glyph) => ` ${GLYPHS[glyph.trim()]}`)
    .trim();
  const fraction = WHOLE_AND_PART.exec(text);
  if (fraction) {
    const [, whole = '0', above, below] = fraction;
    return Number(below) > 0 ? Number(whole) + Number(above) / Number(below) : undefined;
  }
  const plain = COMMA_DECIMAL.test(text) ? text.replace(',', '.') : text;
  if (!DECIMAL.test(plain)) return undefined;
  const number = Number(plain);
  return Number.isFinite(number) ? number : undefined;
};

/**
 * A number as a field shows it: no more figures than anyone would type.
 *
 * @param figures significant ones
 * @example fieldNumber(227.12470704) // '227.125'
 */
export const fieldNumber = (n: number, figures = 6): string =>
  n.toLocaleString('en-US', { maximumSignificantDigits: figures, useGrouping: false });
