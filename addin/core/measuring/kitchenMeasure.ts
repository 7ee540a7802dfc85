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

/** A vessel or weight, with the parts of it that people own too. */
interface Vessel {
  readonly one: string;
  readonly many: string;
  /** How many of the smallest make one. */
  readonly size: number;
  /** Greatest first. */
  readonly parts: readonly { readonly words: string; readonly size: number }[];
}

/** What people measure with in one system. */
interface MeasureSet {
  /** `finest` counts in it. */
  readonly smallest: Unit;
  readonly finest: number;
  /** Those above the smallest, greatest first. */
  readonly larger: readonly Vessel[];
  /** Whether a part of the smallest is said as a fraction or as a decimal. */
  readonly says: 'fractions' | 'decimals';
}

/** Steps of `finest` that a person may be told; far above any garden, far below where doubles blur. */
export const MOST_STEPS = 1e9;
/** Below this a step is no measure, in the unit it counts in. */
export const LEAST_FINEST = 1e-9;
// Units leave noise below this share of an amount.
const NOISE = 1e-12;
const FRACTIONS = [
  [1, 8],
  [1, 4],
  [1, 3],
  [3, 8],
  [1, 2],
  [5, 8],
  [2, 3],
  [3, 4],
  [7, 8],
] as const;

const CUP: Vessel = {
  one: 'cup',
  many: 'cups',
  size: 48,
  parts: [
    { words: '3/4', size: 36 },
    { words: '1/2', size: 24 },
    { words: '1/3', size: 16 },
    { words: '1/4', size: 12 },
  ],
};

const plain = (name: string, size: number): Vessel => ({ one: name, many: name, size, parts: [] });

const setOf = (token: string, finest: number, larger: Vessel[], says: MeasureSet['says']): MeasureSet => ({
  smallest: findUnit(token)!,
  finest,
  larger,
  says,
});

const US_VOLUME = setOf('tsp', 1 / 4, [CUP, plain('tbsp', 3)], 'fractions');
const IMPERIAL_VOLUME = setOf('imp fl oz', 1 / 4, [plain('imp pt', 20)], 'fractions');
const METRIC_VOLUME = setOf('mL', 1, [plain('L', 1000)], 'decimals');
const POUNDS = setOf('oz', 1 / 4, [plain('lb', 16)], 'fractions');
const KILOGRAMS = setOf('g', 1, [plain('kg', 1000)], 'decimals');

const setFor = (unit: Unit): MeasureSet => {
  if (unit.family === 'mass') return unit.system === 'metric' ? KILOGRAMS : POUNDS;
  if (unit.family !== 'volume') throw new RangeError(`${unit.token} measures neither volume nor mass.`);
  if (unit.system === 'metric') return METRIC_VOLUME;
  return unit.system === 'imperial' ? IMPERIAL_VOLUME : US_VOLUME;
};

/**
 * The step to which `measure` rounds when it is told none, and the unit that its steps count in.
 *
 * Source: common practice; nothing published.
 *
 * @param unit of volume or mass; its system chooses the measures
 * @throws RangeError for a unit of another family
 * @example finestMeasure(findUnit('gal')!).step // 0.25
 */
export const finestMeasure = (unit: Unit): { readonly step: number; readonly unit: Unit } => {
  const { finest, smallest } = setFor(unit);
  return { step: finest, unit: smallest };
};

const decimal = (n: number, slack: number): string => {
  const places = Math.max(0, Math.floor(-Math.log10(slack)));
  const digits = n.toFixed(places);
  return digits.includes('.') ? digits.replace(/\.?0+$/, '') : digits;
};

/** 2.25 as '2 1/4'; what no common fraction says stays decimal. */
const fractional = (n: number, slack: number): string => {
  const whole = Math.floor(n + slack);
  if (n - whole <= slack) return String(whole);
  const found = FRACTIONS.find(([above, below]) => Math.abs(n - whole - above / below) <= slack);
  if (!found) return decimal(n, slack);
  return `${whole > 0 ? `${whole} ` : ''}${found[0]}/${found[1]}`;
};

const numberOf = (whole: number, part: string | undefined): string =>
  [...(whole > 0 ? [whole] : []), ...(part === undefined ? [] : [part])].join(' ');

/**
 * So many of the smallest, told vessel by vessel, the largest first. Of the parts of a vessel the one that leaves the
 * fewest measures to follow, the greatest of those: 1/4 cup 3 tbsp, not 1/3 cup 1 tbsp 2 tsp.
 */
const vesselsFor = (rest: number, set: MeasureSet, slack: number, at = 0): string[] => {
  const vessel = set.larger[at];
  if (vessel === undefined) {
    if (rest <= slack) return [];
    const number = set.says === 'fractions' ? fractional(rest, slack) : decimal(rest, slack);
    return [`${number} ${set.smallest.token}`];
  }
  const { one, many, size, parts } = vessel;
  const whole = Math.floor((rest + slack) / size);
  const left = rest - whole * size;
  const least = parts.at(-1)?.size ?? 0;
  const fitting = parts.filter(({ size: part }) => part <= left + slack && left - part < least - slack);
  const ways = (fitting.length > 0 ? fitting : [undefined]).map((part) => {
    const following = vesselsFor(left - (part?.size ?? 0), set, slack, at + 1);
    if (whole === 0 && part === undefined) return following;
    const name = whole > 1 || (whole === 1 && part) ? many : one;
    return [`${numberOf(whole, part?.words)} ${name}`, ...following];
  });
  return ways.reduce((best, way) => (way.length < best.length ? way : best));
};

/** What adding and taking away may leave of nothing. */
const slackOf = (amount: number): number => amount * 1e-14;

/**
 * An amount as it stands, measure by measure, the largest first, without rounding.
 *
 * Source: as `measure`.
 *
 * @param amount counted in the unit that `finestMeasure` answers, > 0
 * @param unit   of volume or mass; its system chooses the measures
 * @throws RangeError for a unit of another family
 * @example toldIn(54, findUnit('cup')!) // ['1 cup', '2 tbsp']
 */
export const toldIn = (amount: number, unit: Unit): string[] =>
  vesselsFor(amount, setFor(unit), slackOf(amount));

/**
 * An amount in the measures that people own.
 *
 * US volumes in cups (with 1/4, 1/3, 1/2 and 3/4), tablespoons and teaspoons; imperial ones in pints and fluid
 * ounces; metric ones in L and mL; masses in lb and oz or in kg and g. The amount is rounded to `finest`, a tie
 * upwards, then told largest measure first: 1.25 L is '1 L 250 mL', 3/4 tsp (a half and a quarter) is '3/4 tsp'. A
 * rest that no common fraction says is decimal, such as '1.3 tsp'.
 *
 * Source: NIST Handbook 44, Appendix C, for the measures; which of them people own is common practice.
 *
 * @param amount   in `unit`, > 0
 * @param unit     of volume or mass; its system chooses the measures
 * @param finest   ≥ 10⁻⁹, counted in tsp, imp fl oz, mL, oz or g; default 1/4 tsp, 1/4 imp fl oz, 1 mL, 1/4 oz, 1 g
 * @param rounding 'down' never passes the amount, as a label's greatest rate asks
 * @returns undefined for an amount under half of `finest`, or under `finest` where rounded down
 * @throws RangeError for a unit of another family, a smaller `finest`, or an amount above 10⁹ × `finest`
 * @example measure(3.75, findUnit('cup')!) // { words: '3 3/4 cups', measured: 3.75, error: 0 }
 */
export const measure = (
  amount: number,
  unit: Unit,
  finest?: number,
  rounding: 'nearest' | 'down' = 'nearest',
): KitchenMeasure | undefined => {
  const set = setFor(unit);
  const step = finest ?? set.finest;
  if (!(step >= LEAST_FINEST))
    throw new RangeError(`The finest measure is ${step}; it is at least ${LEAST_FINEST}.`);
  const exact = convert(amount, unit, set.smallest) / step;
  if (!(exact <= MOST_STEPS)) {
    throw new RangeError(
      `The amount is ${amount} ${unit.token}, more than ${MOST_STEPS} of the finest measure.`,
    );
  }
  const steps = Math.floor((rounding === 'down' ? exact : exact + 0.5) + NOISE * Math.max(1, exact));
  if (steps < 1) return undefined;
  const rounded = convert(steps * step, set.smallest, unit);
  const measured = rounding === 'down' ? Math.min(rounded, amount) : rounded;
  const words = vesselsFor(steps * step, set, slackOf(steps * step)).join(' ');
  return { words, measured, error: measured / amount - 1 };
};
