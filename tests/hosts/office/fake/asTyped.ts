/** What a spreadsheet makes of a text that is put into a cell, English words and marks. */
export type Typed =
  | { readonly kind: 'empty' }
  | { readonly kind: 'formula'; readonly formula: string }
  | { readonly kind: 'value'; readonly value: string | number | boolean }
  | { readonly kind: 'error'; readonly error: string };

const ERRORS = ['#N/A', '#VALUE!', '#REF!', '#DIV/0!', '#NUM!', '#NAME?', '#NULL!'];
const MONTH = '(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*';
const NUMBER = /^[+-]?[$€£]?\(?[+-]?(\d[\d,]*\.?\d*|\.\d+)(e[+-]?\d+)?\)?%?$/i;
const DATES = [
  /^\d{1,4}[-/.]\d{1,2}([-/.]\d{1,4})?$/,
  new RegExp(`^${MONTH}[ -]\\d{1,4}(,? \\d{4})?$`, 'i'),
  new RegExp(`^\\d{1,2}[ -]${MONTH}([ -]\\d{2,4})?$`, 'i'),
  /^\d{1,2}:\d{2}(:\d{2})?( ?[ap]m?)?$/i,
  /^\d{1,2} ?[ap]m?$/i,
  /^\d+ \d+\/\d+$/,
];

/** Something that is no text any more; which number exactly does not matter to those who must not lose the text. */
const TAKEN_FOR_A_NUMBER = 42;

/**
 * What becomes of a text in a cell. A mark of its own keeps it a text and is not part of it.
 *
 * @param isText whether the cell's number format keeps everything as text
 */
export const asTyped = (input: string, isText: boolean): Typed => {
  if (input === '') return { kind: 'empty' };
  if (isText) return { kind: 'value', value: input };
  if (input.startsWith("'")) return { kind: 'value', value: input.slice(1) };
  const words = input.trim();
  if (/^=./s.test(input)) return { kind: 'formula', formula: input };
  if (/^[+\-@]./s.test(input) && !NUMBER.test(words)) return { kind: 'formula', formula: `=${input}` };
  if (ERRORS.includes(words.toUpperCase())) return { kind: 'error', error: words.toUpperCase() };
  if (/^(true|false)$/i.test(words)) return { kind: 'value', value: words.toLowerCase() === 'true' };
  if (NUMBER.test(words)) {
    const value = Number(words.replaceAll(/[,$€£()%]/g, ''));
    return { kind: 'value', value: Number.isFinite(value) ? value : TAKEN_FOR_A_NUMBER };
  }
  if (DATES.some((date) => date.test(words))) return { kind: 'value', value: TAKEN_FOR_A_NUMBER };
  return { kind: 'value', value: input };
};
