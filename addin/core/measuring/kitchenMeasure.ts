import type { Unit } from './units';
import { convert, findUnit } from './units';

/** An amount as a person measures it. */
export interface KitchenMeasure {
  /** Such as '3 3/4 cups' or '1 lb 2 1/4 oz'. */
  readonly words: string;
  /** What the words come to, in the unit of the amount. */
  readonly measured: number;
  /** Share by which the measured is over (+) or under (−) the amount. */
  readonly error: number;
}

/** A vessel with the parts of it that people own. */
interface Vessel {
  readonly one: string;
  readonly many: string;
  /** How many of the smallest vessel fill it. */
  readonly size: number;
  /** Parts of it that are vessels too, greatest first. */
  readonly parts: readonly { readonly words: string; readonly share: number }[];
}

interface Vessels {
  /** The smallest vessel's unit; `finest` counts in it. */
  readonly smallest: Unit;
  readonly finest: number;
  /** Greatest first. */
  readonly set: readonly Vessel[];
  /** How the smallest vessel's own number is written. */
  readonly number: (n: number) => string;
}

// Of these the greatest number of finest steps is still told apart from the next by a double.
const MOST_STEPS = 1e12;
// Units leave noise far below this share of a step.
const NOISE = 1e-9;

const vessel = (one: string, size: number, parts: Vessel['parts'] = [], many = one): Vessel => ({
  one,
  many,
  size,
  parts,
});

const decimal = (n: number): string => String(Number(n.toFixed(6)));

const FRACTIONS = ['1/8', '1/4', '1/3', '3/8', '1/2', '5/8', '2/3', '3/4', '7/8'].map((words) => {
  const [above, below] = words.split('/').map(Number);
  return { words, share: above! / below! };
});

/** 2.25 as '2 1/4'; what no common fraction says stays decimal. */
const fractional = (n: number): string => {
  const whole = Math.floor(n + NOISE);
  const rest = n - whole;
  if (Math.abs(rest) <= NOISE) return String(whole);
  const fraction = FRACTIONS.find(({ share }) => Math.abs(rest - share) <= NOISE);
  if (!fraction) return decimal(n);
  return whole === 0 ? fraction.words : `${whole} ${fraction.words}`;
};

const CUP_PARTS = [
  { words: '3/4', share: 3 / 4 },
  { words: '1/2', share: 1 / 2 },
  { words: '1/3', share: 1 / 3 },
  { words: '1/4', share: 1 / 4 },
];

const vesselsFor = (smallest: string, finest: number, set: Vessel[], number: Vessels['number']): Vessels => ({
  smallest: findUnit(smallest)!,
  finest,
  set,
  number,
});

const SPOONS = vesselsFor(
  'tsp',
  1 / 4,
  [vessel('cup', 48, CUP_PARTS, 'cups'), vessel('tbsp', 3), vessel('tsp', 1)],
  fractional,
);
const IMPERIAL = vesselsFor('imp fl oz', 1 / 4, [vessel('imp pt', 20), vessel('imp fl oz', 1)], fractional);
const JUG = vesselsFor('mL', 1, [vessel('L', 1000), vessel('mL', 1)], decimal);
const OUNCES = vesselsFor('oz', 1 / 4, [vessel('lb', 16), vessel('oz', 1)], fractional);
const SCALES = vesselsFor('g', 1, [vessel('kg', 1000), vessel('g', 1)], decimal);

const vesselsOf = (unit: Unit): Vessels => {
  if (unit.family === 'mass') return unit.system === 'metric' ? SCALES : OUNCES;
  if (unit.family !== 'volume') throw new RangeError(`${unit.token} measures neither volume nor mass.`);
  if (unit.system === 'metric') return JUG;
  return unit.system === 'imperial' ? IMPERIAL : SPOONS;
};

/** An amount in the smallest vessel, told vessel by vessel, the largest first. */
const tell = (amount: number, vessels: Vessels): string => {
  const words: string[] = [];
  let rest = amount;
  for (const { one, many, size, parts } of vessels.set) {
    if (size === 1) {
      if (rest > NOISE) words.push(`${vessels.number(rest)} ${one}`);
      continue;
    }
    const whole = Math.floor(rest / size + NOISE);
    rest = Math.max(0, rest - whole * size);
    const part = parts.find(({ share }) => share * size <= rest + NOISE);
    if (part) rest = Math.max(0, rest - part.share * size);
    const said = [whole > 0 ? String(whole) : '', part?.words ?? ''].filter((text) => text !== '').join(' ');
    if (said !== '') words.push(`${said} ${whole > 1 || (whole === 1 && part) ? many : one}`);
  }
  return words.join(' ');
};

/**
 * An amount in the measures that people own.
 *
 * US volumes in cups (with 1/4, 1/3, 1/2 and 3/4), tablespoons and teaspoons; imperial ones in pints and fluid
 * ounces; metric ones in L and mL; masses in lb and oz or in kg and g. The amount is rounded to `finest`, then told
 * largest measure first. A rest that no common fraction says is decimal ('1.3 tsp').
 *
 * @param amount   in `unit`, > 0
 * @param unit     of volume or mass; its system chooses the measures
 * @param finest   > 0, counted in tsp, imp fl oz, mL, oz or g; default 1/4 tsp, 1/4 imp fl oz, 1 mL, 1/4 oz or 1 g
 * @param rounding 'down' never passes the amount, for rates at a label's greatest
 * @returns undefined for an amount under half of `finest`, or under `finest` where rounded down
 * @throws RangeError for a unit of another family, or an amount of more than 10¹² × `finest`
 * @example measure(3.75, findUnit('cup')!) // { words: '3 3/4 cups', measured: 3.75, error: 0 }
 */
export const measure = (
  amount: number,
  unit: Unit,
  finest?: number,
  rounding: 'nearest' | 'down' = 'nearest',
): KitchenMeasure | undefined => {
  const vessels = vesselsOf(unit);
  const step = finest ?? vessels.finest;
  const exact = convert(amount, unit, vessels.smallest) / step;
  if (!(exact <= MOST_STEPS)) throw new RangeError('The amount is too large for kitchen measures.');
  const steps = Math.floor((rounding === 'down' ? exact : exact + 0.5) + NOISE * Math.max(1, exact));
  if (steps < 1) return undefined;
  const rounded = convert(steps * step, vessels.smallest, unit);
  const measured = rounding === 'down' ? Math.min(rounded, amount) : rounded;
  return { words: tell(steps * step, vessels), measured, error: measured / amount - 1 };
};
