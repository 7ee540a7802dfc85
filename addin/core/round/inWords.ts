import type { Family, System } from '../measuring/units';
import { findUnit, fromCanonical } from '../measuring/units';
import { findRateUnit, fromRate } from '../measuring/rates';
import type { Grams, Litres, LitresPerMinute, Quantity, Rate, Seconds } from '../measuring/quantity';

const UNITS = {
  metric: { volume: 'L', flow: 'L/min', mass: 'kg', byVolume: 'mL/L', byMass: 'g/L' },
  US: { volume: 'gal', flow: 'gal/min', mass: 'lb', byVolume: 'tbsp/gal', byMass: 'oz/100 gal' },
  imperial: {
    volume: 'imp gal',
    flow: 'imp gal/min',
    mass: 'lb',
    byVolume: 'imp fl oz/imp gal',
    byMass: 'oz/100 imp gal',
  },
} as const satisfies Record<System, Record<string, string>>;

/**
 * A number as a sentence says it: four significant figures, thousands apart.
 *
 * @example numberInWords(26417.2) // '26,420'
 */
export const numberInWords = (n: number): string => {
  if (Number.isNaN(n)) return 'no number';
  if (!Number.isFinite(n)) return 'a number without end';
  const tiny = n !== 0 && Math.abs(n) < 1e-6;
  const huge = Math.abs(n) >= 1e15;
  return tiny || huge ? n.toPrecision(3) : n.toLocaleString('en-US', { maximumSignificantDigits: 4 });
};

const withUnit = (value: number, token: string): string =>
  Number.isFinite(value) ? `${numberInWords(value)} ${token}` : numberInWords(value);

const inUnit = <F extends Family>(canonical: Quantity<F>, token: string, family: F): string => {
  const unit = findUnit(token, family);
  if (unit === undefined) throw new Error(`The unit ${token} is not known.`);
  return withUnit(fromCanonical(canonical, unit), token);
};

/** @example volumeInWords(litres(227.12), 'US') // '60 gal' */
export const volumeInWords = (volume: Litres, measures: System): string =>
  inUnit(volume, UNITS[measures].volume, 'volume');

export const flowInWords = (flow: LitresPerMinute, measures: System): string =>
  inUnit(flow, UNITS[measures].flow, 'flow');

/** Unit in which weights are told. */
export const weightUnitOf = (measures: System): string => UNITS[measures].mass;

export const weightInWords = (mass: Grams, measures: System): string =>
  inUnit(mass, weightUnitOf(measures), 'mass');

export const secondsInWords = (time: Seconds): string => withUnit(time, 's');

export const percentInWords = (share: number): string => withUnit(share * 100, '%');

/** A rate as labels print it where those measures are in use. */
export const rateInWords = (rate: Rate, measures: System): string => {
  const token = rate.kind === 'volume' ? UNITS[measures].byVolume : UNITS[measures].byMass;
  const unit = findRateUnit(token);
  const value = unit && fromRate(rate, unit);
  if (value === undefined) throw new Error(`The rate unit ${token} is not known.`);
  return withUnit(value, token);
};

const LONGEST_NAME = 40;

/** A name as a sentence quotes it. */
export const quoted = (name: string): string =>
  `“${name.length > LONGEST_NAME ? `${name.slice(0, LONGEST_NAME)}…` : name}”`;

/** Names in a row, the rest counted: '“a”, “b”, “c” and 4 more'. */
export const namesInWords = (names: readonly string[], most = 3): string => {
  const shown = names.slice(0, most).map(quoted).join(', ');
  return names.length > most ? `${shown} and ${names.length - most} more` : shown;
};
