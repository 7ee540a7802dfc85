export type Family = 'volume' | 'mass' | 'flow' | 'length' | 'temperature';
export type System = 'metric' | 'US' | 'imperial';

/** A unit of measure: canonical value = (value − offset) × factor. */
export interface Unit {
  /** How sheets and formulas write it. */
  readonly token: string;
  readonly family: Family;
  /** Whose measures it belongs to; ounces, pounds, inches, feet and °F count as US. */
  readonly system: System;
  /** Canonical units (L, g, L/min, m, °C) in one of these. */
  readonly factor: number;
  /** Zero of the scale in this unit; 32 for °F, otherwise 0. */
  readonly offset: number;
}

// 231 cubic inches of 2.54 cm.
const GALLON = 3.785411784;
const IMPERIAL_GALLON = 4.54609;
// 7000 grains of 64.79891 mg.
const POUND = 453.59237;
const INCH = 0.0254;
// (12 × 2.54 cm)³.
const CUBIC_FOOT = 28.316846592;

const of = (token: string, family: Family, system: System, factor: number, offset = 0): Unit => ({
  token,
  family,
  system,
  factor,
  offset,
});

const UNITS: readonly Unit[] = [
  of('mL', 'volume', 'metric', 0.001),
  of('L', 'volume', 'metric', 1),
  of('tsp', 'volume', 'US', GALLON / 768),
  of('tbsp', 'volume', 'US', GALLON / 256),
  of('fl oz', 'volume', 'US', GALLON / 128),
  of('cup', 'volume', 'US', GALLON / 16),
  of('pt', 'volume', 'US', GALLON / 8),
  of('qt', 'volume', 'US', GALLON / 4),
  of('gal', 'volume', 'US', GALLON),
  of('imp fl oz', 'volume', 'imperial', IMPERIAL_GALLON / 160),
  of('imp pt', 'volume', 'imperial', IMPERIAL_GALLON / 8),
  of('imp qt', 'volume', 'imperial', IMPERIAL_GALLON / 4),
  of('imp gal', 'volume', 'imperial', IMPERIAL_GALLON),
  of('m3', 'volume', 'metric', 1000),
  of('ft3', 'volume', 'US', CUBIC_FOOT),
  of('mg', 'mass', 'metric', 0.001),
  of('g', 'mass', 'metric', 1),
  of('kg', 'mass', 'metric', 1000),
  of('oz', 'mass', 'US', POUND / 16),
  of('lb', 'mass', 'US', POUND),
  of('L/min', 'flow', 'metric', 1),
  of('L/h', 'flow', 'metric', 1 / 60),
  of('mL/s', 'flow', 'metric', 0.06),
  of('gal/min', 'flow', 'US', GALLON),
  of('gal/h', 'flow', 'US', GALLON / 60),
  of('imp gal/min', 'flow', 'imperial', IMPERIAL_GALLON),
  of('mm', 'length', 'metric', 0.001),
  of('cm', 'length', 'metric', 0.01),
  of('m', 'length', 'metric', 1),
  of('in', 'length', 'US', INCH),
  of('ft', 'length', 'US', INCH * 12),
  of('yd', 'length', 'US', INCH * 36),
  of('C', 'temperature', 'metric', 1),
  of('F', 'temperature', 'US', 5 / 9, 32),
];

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
 * @returns undefined for a text that is no known token, `gpm` or `gph`
 * @example findUnit(' Fl  Oz ')?.token // 'fl oz'
 */
export const findUnit = (text: string): Unit | undefined => BY_SPELLING.get(spelling(text));

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
export const toCanonical = (value: number, unit: Unit): number => (value - unit.offset) * unit.factor;

/**
 * A canonical value (L, g, L/min, m or °C) in another unit; undoes `toCanonical`.
 *
 * Source: as `toCanonical`.
 *
 * @param n any finite number
 * @example fromCanonical(100, findUnit('F')!) // 212
 */
export const fromCanonical = (n: number, unit: Unit): number => n / unit.factor + unit.offset;

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
