import type { Cells, HostInput } from './hostBook';
import { HostError } from './hostError';

const refuse = (why: string): never => {
  throw new HostError('InvalidArgument', why);
};

/** Rows of as many cells as the range has. */
export const rowsOf = (value: unknown, { rows, columns }: Cells): unknown[][] => {
  const fits =
    Array.isArray(value) &&
    value.length === rows &&
    value.every((line) => Array.isArray(line) && line.length === columns);
  return fits ? (value as unknown[][]) : refuse(`not ${rows} rows of ${columns} cells`);
};

export const inputsOf = (value: unknown, cells: Cells): HostInput[][] =>
  rowsOf(value, cells).map((line) =>
    line.map((input) =>
      input === null || ['string', 'number', 'boolean'].includes(typeof input)
        ? (input as HostInput)
        : refuse('a cell takes a text, a number, a truth value or null'),
    ),
  );

export const formatsOf = (value: unknown, cells: Cells): (string | null)[][] =>
  rowsOf(value, cells).map((line) =>
    line.map((format) =>
      format === null || (typeof format === 'string' && format !== '')
        ? format
        : refuse('a number format is a text'),
    ),
  );

export const text = (value: unknown, longest = 32_767): string =>
  typeof value === 'string' && value.length <= longest
    ? value
    : refuse(`not a text of ${longest} characters`);

export const truth = (value: unknown): boolean =>
  typeof value === 'boolean' ? value : refuse('not true or false');

export const number = (value: unknown, least: number, most: number): number =>
  typeof value === 'number' && value >= least && value <= most
    ? value
    : refuse(`not from ${least} to ${most}`);

export const whole = (value: unknown, least: number, most: number): number =>
  Number.isInteger(value) ? number(value, least, most) : refuse('not a whole number');

export const oneOf =
  (...words: readonly string[]) =>
  (value: unknown): string =>
    typeof value === 'string' && words.includes(value) ? value : refuse(`not one of ${words.join(', ')}`);

export const colour = (value: unknown): string =>
  typeof value === 'string' && /^#[0-9A-F]{6}$/i.test(value) ? value.toUpperCase() : refuse('not a colour');

/** An object with these keys only, all of them given unless they may be left out. */
export const keyed = (value: unknown, needed: readonly string[], more: readonly string[] = []): object => {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return refuse('not an object');
  const keys = Object.keys(value);
  if (needed.some((key) => !keys.includes(key))) return refuse(`without ${needed.join(', ')}`);
  const odd = keys.find((key) => !needed.includes(key) && !more.includes(key));
  return odd === undefined ? value : refuse(`has no ${odd}`);
};

/** True for cells of the program's range. */
export const isCells = (value: unknown): value is Cells =>
  typeof value === 'object' && value !== null && 'rows' in value && 'sheet' in value;

export const cellsIn = (value: unknown): Cells => (isCells(value) ? value : refuse('not a range'));
