import type { Rows, Single, Value } from './cellValues';

export const isRows = (value: Value): value is Rows => Array.isArray(value);
export const isError = (value: Value): value is { readonly error: string } =>
  typeof value === 'object' && value !== null && 'error' in value;
const isBlank = (value: Value): boolean => value === '' || value === null;

/** A range of one cell is its one value; undefined for a larger one. */
export const single = (value: Value): Single | undefined => {
  if (!isRows(value)) return value;
  return value.length === 1 && value[0]!.length === 1 ? value[0]![0] : undefined;
};

/** The number that a value counts as in arithmetic; undefined for a text, which spreadsheets take in different ways. */
export const asNumber = (value: Single): number | undefined => {
  if (typeof value === 'number') return value;
  if (typeof value === 'boolean') return value ? 1 : 0;
  return isBlank(value) ? 0 : undefined;
};

const ARITHMETIC: Readonly<Record<string, (a: number, b: number) => number>> = {
  '+': (a, b) => a + b,
  '-': (a, b) => a - b,
  '*': (a, b) => a * b,
  '/': (a, b) => a / b,
  '^': (a, b) => a ** b,
};

const COMPARED: Readonly<Record<string, (order: number) => boolean>> = {
  '=': (order) => order === 0,
  '<>': (order) => order !== 0,
  '<': (order) => order < 0,
  '>': (order) => order > 0,
  '<=': (order) => order <= 0,
  '>=': (order) => order >= 0,
};

const orderOf = (left: Single, right: Single): number | undefined => {
  const texts = [left, right].filter((value) => typeof value === 'string' && value !== '');
  // A blank cell equals empty text and 0 alike; text comes after every number.
  if (texts.length === 1) return texts[0] === left ? 1 : -1;
  if (texts.length === 2)
    return String(left).localeCompare(String(right), undefined, { sensitivity: 'base' });
  return asNumber(left)! - asNumber(right)!;
};

const textOf = (value: Single): string => {
  if (typeof value === 'boolean') return value ? 'TRUE' : 'FALSE';
  return typeof value === 'number' ? String(Number(value.toPrecision(15))) : String(value ?? '');
};

/** Two values under an operator, as a spreadsheet has it; undefined where that is not sure. */
export const joined = (operator: string, left: Single, right: Single): Single | undefined => {
  const error = [left, right].find(isError);
  if (error) return error;
  const [a, b] = [asNumber(left), asNumber(right)];
  const arithmetic = ARITHMETIC[operator];
  if (arithmetic) {
    if (a === undefined || b === undefined) return undefined;
    const result = arithmetic(a, b);
    return Number.isFinite(result) ? result : { error: operator === '/' ? '#DIV/0!' : '#NUM!' };
  }
  if (operator === '&') return textOf(left) + textOf(right);
  const order = orderOf(left, right);
  return order === undefined ? undefined : COMPARED[operator]?.(order);
};

/** The numbers among ranges and values; undefined where a text or a truth value stands by itself, which may count. */
const numbers = (args: readonly Value[]): number[] | undefined => {
  const found: number[] = [];
  for (const arg of args) {
    if (!isRows(arg) && typeof arg !== 'number' && !isBlank(arg)) return undefined;
    found.push(...(isRows(arg) ? arg.flat() : [arg]).filter((cell) => typeof cell === 'number'));
  }
  return found;
};

const ofNumbers =
  (compute: (all: readonly number[]) => Single) =>
  (args: readonly Value[]): Single | undefined => {
    const all = numbers(args);
    return all && compute(all);
  };

const ofSingles =
  (compute: (...given: number[]) => Single | undefined) =>
  (args: readonly Value[]): Single | undefined => {
    const given = args.map((arg) => {
      const value = single(arg);
      return value === undefined ? undefined : asNumber(value);
    });
    return given.includes(undefined) ? undefined : compute(...(given as number[]));
  };

/** To so many decimals, with the noise of binary fractions taken off before. */
const rounded =
  (round: (size: number) => number) =>
  (n = 0, decimals = 0): number => {
    const scale = 10 ** Math.trunc(decimals);
    return Math.sign(n) * (round(Number((Math.abs(n) * scale).toPrecision(15))) / scale);
  };

const sum = (all: readonly number[]): number => all.reduce((total, n) => total + n, 0);

const index = ([from, ...at]: readonly Value[]): Single | undefined => {
  const places = at
    .map((place) => single(place))
    .map((place) => (typeof place === 'number' ? place : Number.NaN));
  if (from === undefined || !isRows(from) || places.length === 0) return undefined;
  const [row = 1, column = 1] = places.length === 1 && from.length === 1 ? [1, places[0]] : places;
  return places.length === 1 && from.length > 1 && from[0]!.length > 1
    ? undefined
    : from[row - 1]?.[column - 1];
};

/** Only what is the same; signs in a text that stand for others are not followed. */
const match = ([wanted, among, kind]: readonly Value[]): Single | undefined => {
  const value = wanted === undefined ? undefined : single(wanted);
  if (
    value === undefined ||
    /[*?~]/.test(textOf(value)) ||
    kind !== 0 ||
    among === undefined ||
    !isRows(among)
  )
    return undefined;
  if (among.length > 1 && among[0]!.length > 1) return undefined;
  const at = among.flat().findIndex((cell) => typeof cell === typeof value && orderOf(cell, value) === 0);
  return at < 0 ? { error: '#N/A' } : at + 1;
};

type Compute = (args: readonly Value[]) => Value | undefined;

const COMPUTE: Readonly<Record<string, Compute>> = {
  TRUE: () => true,
  FALSE: () => false,
  NA: () => ({ error: '#N/A' }),
  AND: ofSingles((...all) => all.every((n) => n !== 0)),
  OR: ofSingles((...all) => all.some((n) => n !== 0)),
  NOT: ofSingles((n) => n === 0),
  SUM: ofNumbers(sum),
  MIN: ofNumbers((all) => (all.length === 0 ? 0 : Math.min(...all))),
  MAX: ofNumbers((all) => (all.length === 0 ? 0 : Math.max(...all))),
  ABS: ofSingles((n = 0) => Math.abs(n)),
  INT: ofSingles((n = 0) => Math.floor(n)),
  MOD: ofSingles((n = 0, by = 0) => (by === 0 ? { error: '#DIV/0!' } : n - by * Math.floor(n / by))),
  ROUND: ofSingles(rounded(Math.round)),
  ROUNDUP: ofSingles(rounded(Math.ceil)),
  ROUNDDOWN: ofSingles(rounded(Math.floor)),
};

/** Functions that choose among cells or ask what stands there: an error in another cell does not matter. */
const CHOOSE: Readonly<Record<string, Compute>> = {
  INDEX: (args) => args.find(isError) ?? index(args),
  MATCH: (args) => args.find(isError) ?? match(args),
  ISNUMBER: ([value = '']) => typeof single(value) === 'number',
  COUNT: (args) => numbers(args.map((arg) => (isError(arg) ? '' : arg)))?.length,
};

/**
 * A few functions of every spreadsheet on plain values, those that a formula around ours is likely to hold.
 *
 * @param name in capitals
 * @returns undefined for a function that is not known here, and where its answer is not sure
 * @example computed('SUM', [[[24, 25, '']]]) // 49
 */
export const computed = (name: string, args: readonly Value[]): Value | undefined => {
  const choose = CHOOSE[name];
  if (choose) return choose(args);
  const compute = COMPUTE[name];
  return (
    compute && (args.flatMap((arg) => (isRows(arg) ? arg.flat() : [arg])).find(isError) ?? compute(args))
  );
};
