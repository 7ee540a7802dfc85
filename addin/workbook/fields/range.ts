import { fromCanonical, numberInWords, type Family, type Quantity, type Unit } from '../../core';

/** The numbers that a field may hold; what is left out sets no end. */
export interface NumberRange {
  readonly above?: number;
  readonly least?: number;
  readonly most?: number;
  readonly whole?: boolean;
  /** True where the ends lie far outside any garden: they are told only to one who is past them. */
  readonly far?: boolean;
}

export const inRange = (n: number, range: NumberRange): boolean => {
  const { above = -Infinity, least = -Infinity, most = Infinity, whole = false } = range;
  return n > above && n >= least && n <= most && (!whole || Number.isInteger(n));
};

/**
 * What is allowed, as the end of "use …".
 *
 * @example rangeWords({ least: 0, most: 3600 }) // 'a number from 0 to 3,600'
 */
export const rangeWords = (range: NumberRange, given?: unknown): string => {
  const { above, least, most, whole, far } = range;
  const number = whole ? 'a whole number' : 'a number';
  if (far && !(typeof given === 'number' && given > 0))
    return (least ?? 0) > 0 ? `${number} above 0` : `${number} of 0 or more`;
  const upTo = most === undefined ? '' : `, up to ${numberInWords(most)}`;
  if (above !== undefined) return `${number} above ${numberInWords(above)}${upTo}`;
  if (least === undefined) return number;
  return most === undefined
    ? `${number} of ${numberInWords(least)} or more`
    : `${number} from ${numberInWords(least)} to ${numberInWords(most)}`;
};

const changed = (range: NumberRange, change: (n: number) => number): NumberRange => ({
  ...range,
  ...(range.least === undefined ? {} : { least: change(range.least) }),
  ...(range.most === undefined ? {} : { most: change(range.most) }),
});

/** A range of canonical values (L, g, L/min, m) in a unit. */
export const rangeIn = (range: NumberRange, unit: Unit): NumberRange => ({
  ...changed(range, (n) => fromCanonical(n as Quantity<Family>, unit)),
  far: true,
});

/** A range told in a unit that is so many times smaller: per cent for shares, 1/60 for minutes in place of seconds. */
export const timesRange = (range: NumberRange, times: number): NumberRange =>
  changed(range, (n) => n * times);
