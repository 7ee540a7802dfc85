/** Month names, halves of the day and the letter of powers: words that a date, a time or a number may have in it. */
const NUMBER_WORDS =
  /^(jan(uary)?|feb(ruary)?|mar(ch)?|apr(il)?|may|june?|july?|aug(ust)?|sept?(ember)?|oct(ober)?|nov(ember)?|dec(ember)?|[ap]m?|e)$/i;
const LONGEST_NUMBER = 255;

const readsAsNumber = (text: string): boolean =>
  /\d/.test(text) &&
  text.length <= LONGEST_NUMBER &&
  (text.match(/\p{L}+/gu) ?? []).every((word) => NUMBER_WORDS.test(word));

/**
 * A text as the program must be given it, so that it stays text: with an apostrophe before it where the program would
 * take it for a formula, a number, a date, a truth word or an error. The apostrophe is not part of the text.
 *
 * @example cellText('1/2') // "'1/2"
 * @example cellText('Rose 12') // 'Rose 12'
 */
export const cellText = (text: string): string =>
  /^[=+\-@'#]/.test(text) || /^\s*(true|false)\s*$/i.test(text) || readsAsNumber(text) ? `'${text}` : text;
