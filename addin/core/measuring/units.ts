import type { Quantity } from './quantity';

export type System = 'metric' | 'US' | 'imperial';

// 231 cubic inches of 2.54 cm.
const GALLON = 3.785411784;
const IMPERIAL_GALLON = 4.54609;
// 7000 grains of 64.79891 mg.
const POUND = 453.59237;
const INCH = 0.0254;
// (12 × 2.54 cm)³.
const CUBIC_FOOT = 28.316846592;

type Row = readonly [token: string, system: System, factor: number, offset?: number];

/**
 * Every family of units, in the order in which people are shown them. A family is declared here and nowhere else: what
 * reads a unit is told its family, and gets a `Unit` of it; a value in such a unit becomes a `Quantity` of the family.
 */
const FAMILIES = {
  // L
  volume: [
    ['mL', 'metric', 0.001],
    ['L', 'metric', 1],
    ['tsp', 'US', GALLON / 768],
    ['tbsp', 'US', GALLON / 256],
    ['fl oz', 'US', GALLON / 128],
    ['cup', 'US', GALLON / 16],
    ['pt', 'US', GALLON / 8],
    ['qt', 'US', GALLON / 4],
    ['gal', 'US', GALLON],
    ['imp fl oz', 'imperial', IMPERIAL_GALLON / 160],
    ['imp pt', 'imperial', IMPERIAL_GALLON / 8],
    ['imp qt', 'imperial', IMPERIAL_GALLON / 4],
    ['imp gal', 'imperial', IMPERIAL_GALLON],
    ['m3', 'metric', 1000],
    ['ft3', 'US', CUBIC_FOOT],
  ],
  // g
  mass: [
    ['mg', 'metric', 0.001],
    ['g', 'metric', 1],
    ['kg', 'metric', 1000],
    ['oz', 'US', POUND / 16],
    ['lb', 'US', POUND],
  ],
  // L/min
  flow: [
    ['L/min', 'metric', 1],
    ['L/h', 'metric', 1 / 60],
    ['mL/s', 'metric', 0.06],
    ['gal/min', 'US', GALLON],
    ['gal/h', 'US', GALLON / 60],
    ['imp gal/min', 'imperial', IMPERIAL_GALLON],
  ],
  // m
  length: [
    ['mm', 'metric', 0.001],
    ['cm', 'metric', 0.01],
    ['m', 'metric', 1],
    ['in', 'US', INCH],
    ['ft', 'US', INCH * 12],
    ['yd', 'US', INCH * 36],
  ],
  // °C
  temperature: [
    ['C', 'metric', 1],
    ['F', 'US', 5 / 9, 32],
  ],
} satisfies Readonly<Record<string, readonly Row[]>>;

export type Family = keyof typeof FAMILIES;

/** Names of the families, such as 'volume'. */
export const families = Object.keys(FAMILIES) as readonly Family[];

/** A unit of measure: canonical value = (value − offset) × factor. */
export interface Unit<F extends Family = Family> {
  /** How sheets and formulas write it. */
  readonly token: string;
  readonly family: F;
  /** Whose measures it belongs to; ounces, pounds, inches, feet and °F count as US. */
  readonly system: System;
  /** Canonical units (L, g, L/min, m, °C) in one of these. */
  readonly factor: number;
  /** Zero of the scale in this unit; 32 for °F, otherwise 0. */
  readonly offset: number;
}

const UNITS: readonly Unit[] = families.flatMap((family) =>
  FAMILIES[family].map(([token, system, factor, offset = 0]: Row): Unit => ({
    token,
    family,
    system,
    factor,
    offset,
  })),
);

// Spellings of the trade for units that have a token of their own.
const ALSO: Readonly<Record<string, string>> = { gpm: 'gal/min', gph: 'gal/h' };

const spelling = (text: string): string =>
  text
    .trim()
    .replace(/\s+/g, ' ')
    .replace(/ ?\/ ?/g, '/')
    .toLowerCase();

const BY_SPELLING: ReadonlyMap<string, Unit> = new Map([
  ...UNITS.map((unit): [string, Unit] => [spelling(unit.token), unit]),
  ...Object.entries(ALSO).map(([also, token]): [string, Unit] => [
    also,
    UNITS.find((unit) => unit.token === token)!,
  ]),
]);

/**
 * The unit that a text names: case and surrounding spaces do not matter, nothing is guessed.
 *
 * @param wanted families that it may be of; any where none is named
 * @returns undefined for a text that is no known token, `gpm` or `gph`, or names a unit of another family
 * @example findUnit(' Fl  Oz ')?.token // 'fl oz'
 */
export const findUnit = <F extends Family = Family>(
  text: string,
  ...wanted: readonly F[]
): Unit<NoInfer<F>> | undefined => {
  const unit = BY_SPELLING.get(spelling(text));
  const fits = unit !== undefined && (wanted.length === 0 || wanted.some((family) => family === unit.family));
  return fits ? (unit as Unit<NoInfer<F>>) : undefined;
};

/**
 * Tokens of a family, in the order in which people are shown them.
 *
 * @example knownUnits('temperature') // ['C', 'F']
 */
export const knownUnits = (family: Family): readonly string[] =>
  UNITS.filter((unit) => unit.family === family).map((unit) => unit.token);

/**
 * A value in the canonical unit of its family: L, g, L/min, m or °C.
 *
 * Source: NIST Handbook 44, Appendix C (US measures, all exact); UK Units of Measurement Regulations (imperial ones);
 * metric by definition.
 *
 * @param value any finite number
 * @example toCanonical(1, findUnit('gal')!) // 3.785411784
 */
export const toCanonical = <F extends Family>(value: number, unit: Unit<F>): Quantity<F> =>
  ((value - unit.offset) * unit.factor) as Quantity<F>;

/**
 * A canonical value (L, g, L/min, m or °C) in another unit; undoes `toCanonical`.
 *
 * Source: as `toCanonical`.
 *
 * @param n any finite number
 * @example fromCanonical(litres(1), findUnit('mL', 'volume')!) // 1000
 */
export const fromCanonical = <F extends Family>(n: Quantity<NoInfer<F>>, unit: Unit<F>): number =>
  n / unit.factor + unit.offset;

// Units of one system are whole multiples of each other; a ratio this near to a whole number is one.
const WHOLE = 1e-14;

const wholeNear = (ratio: number): number | undefined => {
  const whole = Math.round(ratio);
  return whole >= 1 && Math.abs(ratio - whole) <= WHOLE * whole ? whole : undefined;
};

/**
 * The same value in another unit of the same family; exact between whole multiples, such as cups and teaspoons.
 *
 * Source: as `toCanonical`.
 *
 * @param value any finite number
 * @throws RangeError for units of two families
 * @example convert(60, findUnit('gal')!, findUnit('cup')!) // 960
 */
export const convert = (value: number, from: Unit, to: Unit): number => {
  if (from.family !== to.family) {
    throw new RangeError(`${from.token} is ${from.family} and ${to.token} is ${to.family}.`);
  }
  if (from.offset !== to.offset) return fromCanonical(toCanonical(value, from), to);
  const times = wholeNear(from.factor / to.factor);
  if (times !== undefined) return value * times;
  const parts = wholeNear(to.factor / from.factor);
  if (parts !== undefined) return value / parts;
  return (value * from.factor) / to.factor;
};
