/*
 * Reads the figures of a working, independently of how they were written: "60 gal × 1 tbsp/gal = 60 tbsp" is two
 * sides that come to one amount. A figure is printed to six digits, so that it stands for a small interval; so does
 * what is reckoned from it.
 */

/** An amount in litres, grams, metres, seconds and degrees, with the powers of each, and how far it may be off. */
export interface Amount {
  readonly value: number;
  readonly off: number;
  /** Powers by dimension, such as { L: 1, s: -1 }; none for a bare number. */
  readonly powers: Readonly<Record<string, number>>;
}

/** A figure as it stands in a text: its number, and its unit where one follows. */
export interface Figure {
  readonly text: string;
  readonly number: number;
  readonly unit: string;
  readonly amount: Amount;
}

interface Measure {
  readonly factor: number;
  readonly powers: Readonly<Record<string, number>>;
  readonly whose: 'metric' | 'US' | 'imperial' | 'none';
  readonly zero?: number;
}

// NIST Handbook 44, Appendix C (a gallon is 231 cubic inches, a pound 453.59237 g, an inch 2.54 cm); the imperial
// gallon is 4.54609 L by the UK Units of Measurement Regulations.
const GAL = 231 * 0.0254 ** 3 * 1000;
const IMPERIAL = 4.54609;
const POUND = 453.59237;

const measures = (
  whose: Measure['whose'],
  dimension: string,
  factors: Readonly<Record<string, number>>,
): [string, Measure][] =>
  Object.entries(factors).map(([token, factor]) => [
    token,
    { factor, powers: dimension === '' ? {} : { [dimension]: 1 }, whose },
  ]);

const PLAIN = new Map<string, Measure>([
  ...measures('metric', 'L', { mL: 0.001, L: 1, m3: 1000 }),
  ...measures('US', 'L', {
    tsp: GAL / 768,
    tbsp: GAL / 256,
    'fl oz': GAL / 128,
    cup: GAL / 16,
    cups: GAL / 16,
    pt: GAL / 8,
    qt: GAL / 4,
    gal: GAL,
    ft3: 0.3048 ** 3 * 1000,
  }),
  ...measures('imperial', 'L', {
    'imp fl oz': IMPERIAL / 160,
    'imp pt': IMPERIAL / 8,
    'imp qt': IMPERIAL / 4,
    'imp gal': IMPERIAL,
  }),
  ...measures('metric', 'g', { mg: 0.001, g: 1, kg: 1000 }),
  ...measures('US', 'g', { oz: POUND / 16, lb: POUND }),
  ...measures('metric', 'm', { mm: 0.001, cm: 0.01, m: 1 }),
  ...measures('US', 'm', { in: 0.0254, ft: 0.3048, yd: 0.9144 }),
  ...measures('none', 's', { s: 1, min: 60, h: 3600 }),
  ...measures('none', '', { '%': 0.01 }),
  ['C', { factor: 1, powers: { degree: 1 }, whose: 'metric', zero: 0 }],
  ['F', { factor: 5 / 9, powers: { degree: 1 }, whose: 'US', zero: 32 }],
]);

const either = (words: Iterable<string>): string =>
  [...words]
    .sort((a, b) => b.length - a.length)
    .map((word) => word.replace(/[%]/, '\\$&'))
    .join('|');
const ONE_UNIT = `(?:${either(PLAIN.keys())})`;
const UNIT = `${ONE_UNIT}(?:/(?:\\d+(?:\\.\\d+)? )?${ONE_UNIT})?(?![\\w/])`;
const NUMBER = '-?\\d+(?:\\.\\d+)?(?:e[+-]?\\d+)?';
const MIXED = `(?:\\d+ )?\\d+/\\d+(?!\\d)|${NUMBER}`;

const powersOf = (
  a: Readonly<Record<string, number>>,
  b: Readonly<Record<string, number>>,
  sign: number,
): Readonly<Record<string, number>> => {
  const all = [...new Set([...Object.keys(a), ...Object.keys(b)])].map((key): [string, number] => [
    key,
    (a[key] ?? 0) + sign * (b[key] ?? 0),
  ]);
  return Object.fromEntries(all.filter(([, power]) => power !== 0));
};

const measureOf = (unit: string): Measure => {
  const [amount, per] = unit.split('/') as [string, string | undefined];
  const above = PLAIN.get(amount)!;
  if (per === undefined) return above;
  const [, count = '1', volume] = /^(?:([\d.]+) )?(.+)$/.exec(per)!;
  const below = PLAIN.get(volume!)!;
  const whose = [above.whose, below.whose];
  return {
    factor: above.factor / (Number(count) * below.factor),
    powers: powersOf(above.powers, below.powers, -1),
    whose: whose.includes('imperial') ? 'imperial' : whose.includes('US') ? 'US' : 'metric',
  };
};

/** Whose measures a unit belongs to. */
export const whoseMeasure = (unit: string): Measure['whose'] => measureOf(unit).whose;

const plainNumber = (text: string): number => {
  const [, whole = '0', above, below] = /^(?:(\d+) )?(\d+)\/(\d+)$/.exec(text) ?? [];
  return above === undefined ? Number(text) : Number(whole) + Number(above) / Number(below);
};

const DIGITS = 6;

/** Half of the sixth digit; whole from there on, powers of ten from 1e15 on. */
const offBy = (number: number): number => {
  if (number === 0) return 0;
  const size = Math.abs(number);
  const digit = 10 ** (Math.floor(Math.log10(size)) - DIGITS + 1);
  return 0.5000001 * (size >= 1e15 ? digit : Math.min(digit, 1));
};

/** An amount in a unit; a bare number where there is none. */
export const amountOf = (number: number, unit = '', off = offBy(number)): Amount => {
  if (unit === '') return { value: number, off, powers: {} };
  const { factor, powers, zero = 0 } = measureOf(unit);
  return { value: (number - zero) * factor, off: off * factor, powers };
};

const noise = (value: number): number => 1e-9 * Math.abs(value);

const times = (a: Amount, b: Amount): Amount => ({
  value: a.value * b.value,
  off: Math.abs(a.value) * b.off + Math.abs(b.value) * a.off + a.off * b.off,
  powers: powersOf(a.powers, b.powers, 1),
});

const over = (a: Amount, b: Amount): Amount => {
  const value = a.value / b.value;
  return {
    value,
    off: (a.off + Math.abs(value) * b.off) / Math.max(Math.abs(b.value) - b.off, 1e-300),
    powers: powersOf(a.powers, b.powers, -1),
  };
};

const same = (a: Amount['powers'], b: Amount['powers']): boolean =>
  Object.keys(powersOf(a, b, -1)).length === 0;

const plus = (a: Amount, b: Amount, sign: number): Amount => {
  if (!same(a.powers, b.powers)) throw new Error('adds what cannot be added');
  return { value: a.value + sign * b.value, off: a.off + b.off, powers: a.powers };
};

/** Whether two amounts are one, to the digits that were printed. */
export const agree = (a: Amount, b: Amount): boolean =>
  same(a.powers, b.powers) && Math.abs(a.value - b.value) <= a.off + b.off + noise(a.value) + noise(b.value);

/** Whether they are one number, whatever the unit of either. */
export const agreeInNumber = (a: Amount, b: Amount): boolean =>
  agree({ ...a, powers: {} }, { ...b, powers: {} });

const figureOf = (text: string, unit: string): Figure => {
  const number = plainNumber(text);
  const amount = amountOf(number, unit);
  return { text: unit === '' ? text : `${text} ${unit}`, number, unit, amount };
};

const FIGURES = new RegExp(`(?<![\\w.])(${MIXED})(?: (${UNIT}))?`, 'g');

/** Every figure of a text, in order. A text in quotes has none. */
export const figuresOf = (text: string): Figure[] =>
  [...text.replace(/“[^”]*”|"[^"]*"/g, ' ').matchAll(FIGURES)].map(([, number, unit = '']) =>
    figureOf(number!, unit),
  );

const TOKENS = new RegExp(`\\s*(?:(${MIXED})(?: (${UNIT}))?|(π)|([()×÷+−√²]))`, 'y');

type Token = { readonly figure: Pick<Figure, 'amount'> & Partial<Figure> } | { readonly sign: string };

const PI: Token = { figure: { amount: { value: Math.PI, off: 0, powers: {} } } };

/** The arithmetic at the beginning of a text, and the words after it. */
const tokensOf = (text: string): { tokens: Token[]; rest: string } => {
  const tokens: Token[] = [];
  TOKENS.lastIndex = 0;
  let end = 0;
  for (let found = TOKENS.exec(text); found !== null; found = TOKENS.exec(text)) {
    const [, number, unit = '', pi, sign] = found;
    end = TOKENS.lastIndex;
    if (pi) tokens.push(PI);
    else if (sign) tokens.push({ sign });
    else tokens.push({ figure: figureOf(number!, unit) });
  }
  return { tokens, rest: text.slice(end) };
};

const reckon = (tokens: readonly Token[]): Amount => {
  let at = 0;
  const signAt = (): string | undefined => {
    const token = tokens[at];
    return token !== undefined && 'sign' in token ? token.sign : undefined;
  };
  const primary = (): Amount => {
    const token = tokens[at++];
    if (token === undefined) throw new Error('ends with a sign');
    if ('figure' in token) {
      let amount = token.figure.amount;
      // "1 kg 250 g" is one amount.
      for (let next = tokens[at]; next !== undefined && 'figure' in next; next = tokens[++at])
        amount = plus(amount, next.figure.amount, 1);
      return amount;
    }
    if (token.sign === '√') {
      const { value, off, powers } = primary();
      return { value: Math.sqrt(value), off: off / (2 * Math.sqrt(value)), powers };
    }
    if (token.sign !== '(') throw new Error(`has “${token.sign}” where a figure belongs`);
    const inside = sum();
    if (signAt() !== ')') throw new Error('opens a bracket and does not close it');
    at += 1;
    return inside;
  };
  const power = (): Amount => {
    let base = primary();
    for (; signAt() === '²'; at += 1) base = times(base, base);
    return base;
  };
  const product = (): Amount => {
    let left = power();
    for (let sign = signAt(); sign === '×' || sign === '÷'; sign = signAt()) {
      at += 1;
      left = (sign === '×' ? times : over)(left, power());
    }
    return left;
  };
  const sum = (): Amount => {
    let left = product();
    for (let sign = signAt(); sign === '+' || sign === '−'; sign = signAt()) {
      at += 1;
      left = plus(left, product(), sign === '+' ? 1 : -1);
    }
    return left;
  };
  const result = sum();
  if (at < tokens.length) throw new Error('goes on after its end');
  return result;
};

/** One side of an equation. */
export interface Side {
  readonly text: string;
  /** What its arithmetic comes to; undefined where it begins with words. */
  readonly comesTo?: Amount;
  /** The figures that it reckons with, or all of them where it begins with words. */
  readonly figures: readonly Figure[];
  /** The figures in the words after the arithmetic. */
  readonly inWords: readonly Figure[];
  /** Whether words follow the arithmetic. */
  readonly worded: boolean;
  /** Whether its arithmetic is one figure. */
  readonly single: boolean;
  /** Whether its figures have no unit at all. */
  readonly bare: boolean;
}

/** Reads one side of an equation; throws where its arithmetic does not hold together. */
export const sideOf = (text: string): Side => {
  const { tokens, rest } = tokensOf(text);
  const figures = figuresOf(text.slice(0, text.length - rest.length));
  const wordsFirst = tokens.length === 0 || /[=×÷+−√²()]/.test(rest);
  if (wordsFirst)
    return { text, figures: figuresOf(text), inWords: [], worded: true, single: false, bare: false };
  return {
    text,
    comesTo: reckon(tokens),
    figures,
    inWords: figuresOf(rest),
    worded: rest.trim() !== '',
    single: tokens.length === 1,
    bare: figures.every(({ unit }) => unit === ''),
  };
};

/** The parts of a step between its commas, colons and semicolons, and the sides of each that is an equation. */
export const partsOf = (text: string): string[][] => text.split(/[,;:] /).map((part) => part.split(' = '));
