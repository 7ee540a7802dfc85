import type { ListCell } from './adoption';
import { looksLikeBed } from './bedNames';
import { cellText, nameKey } from './cellText';
import { readCount } from './plantCount';
import { readRoseWords, type RoseColumn } from './roseWords';

/** What a column's values look like; shares are of the filled cells, 0 to 1. */
export interface ColumnContent {
  /** Filled cells ÷ rows looked at. */
  readonly filled: number;
  readonly samples: readonly string[];
  /** Different values ÷ filled cells. */
  readonly distinct: number;
  readonly text: number;
  /** Short marks such as 'A', 'B2', '12a'. */
  readonly marks: number;
  readonly classWords: number;
  readonly sizeWords: number;
  readonly potWords: number;
  readonly bedWords: number;
  /** Small whole numbers, or text that says a number of plants. */
  readonly counts: number;
  /** Whole numbers from 1900 to 2099. */
  readonly years: number;
  /** Whole numbers in the range of spreadsheet days from 1950 to 2099. */
  readonly days: number;
  /** True where the values number the lines. */
  readonly countsLines: boolean;
}

const SAMPLES = 4;
const MOST_USUAL_COUNT = 300;
const DAY_1950 = 18_264;
const DAY_2100 = 73_051;

const share = (cells: readonly ListCell[], is: (cell: ListCell) => boolean): number =>
  cells.length === 0 ? 0 : cells.reduce<number>((sum, cell) => sum + (is(cell) ? 1 : 0), 0) / cells.length;

const saysCount = (cell: ListCell): boolean => {
  const reading = readCount(cell);
  return 'count' in reading && reading.count <= MOST_USUAL_COUNT;
};

const between = (cell: ListCell, low: number, high: number): boolean => {
  const number =
    typeof cell === 'number' ? cell : /^\d{4}$/.test(cellText(cell)) ? Number(cellText(cell)) : NaN;
  return number >= low && number < high;
};

const saysClass = (text: string): boolean => readRoseWords(text, 'class')?.roseClass !== undefined;
/** Of single letters only S, M and L are sizes without a heading; A, B, C are beds. */
const says = (text: string, column: RoseColumn): boolean => {
  if (text.length === 1 && !/[sml]/i.test(text)) return false;
  const reading = readRoseWords(text, column);
  return (column === 'size' ? reading?.size : reading?.pot) !== undefined;
};

/** Numbers alone do not make a pot column: '3' is a pot's size only under a heading that says so. */
const saysPot = (text: string): boolean => !/^\d+$/.test(text) && says(text, 'pot');

const LINE_GAP = 5;

/** Numbers that count the lines: 1, 2, 3 …, with small gaps and repeats, perhaps from 1 again under each bed. */
const countsLines = (cells: readonly ListCell[]): boolean => {
  const numbers = cells.map((cell) => Number(cellText(cell).replace(/[.)]$/, '') || NaN));
  if (numbers.length < 4) return false;
  const steps = numbers.slice(1).map((number, i) => number - numbers[i]!);
  const onward = steps.every((step, i) => (step >= 0 && step <= LINE_GAP) || numbers[i + 1] === 1);
  return onward && steps.filter((step) => step === 1).length * 5 > steps.length * 3;
};

/**
 * Looks at the values of one column.
 *
 * @param sampled cells spread over the whole list
 * @param first cells of the first rows, one under the other
 */
export const columnContent = (sampled: readonly ListCell[], first: readonly ListCell[]): ColumnContent => {
  const cells = sampled.filter((cell) => cellText(cell) !== '');
  const texts = cells.map(cellText);
  const ofText = (is: (text: string) => boolean) =>
    share(cells, (cell) => typeof cell === 'string' && is(cellText(cell)));
  // S and M alone are sizes before they are classes.
  const lettersOnly = texts.every((text) => /^[sml]$/i.test(text));
  return {
    filled: sampled.length === 0 ? 0 : cells.length / sampled.length,
    samples: [...new Set(texts)].slice(0, SAMPLES),
    distinct: texts.length === 0 ? 0 : new Set(texts.map(nameKey)).size / texts.length,
    text: ofText((text) => /\p{L}{2}/u.test(text)),
    marks: ofText((text) => /^\p{L}?\d{0,2}\p{L}?$/u.test(text) && /\p{L}/u.test(text)),
    classWords: ofText(saysClass) * (lettersOnly ? 0.5 : 1),
    sizeWords: ofText((text) => says(text, 'size')),
    potWords: ofText(saysPot),
    bedWords: ofText(looksLikeBed),
    counts: share(cells, saysCount),
    years: share(cells, (cell) => between(cell, 1900, 2100)),
    days: share(cells, (cell) => between(cell, DAY_1950, DAY_2100)),
    countsLines: countsLines(first.filter((cell) => cellText(cell) !== '')),
  };
};
