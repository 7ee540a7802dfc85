import { findUnit, fromCanonical, numberInWords } from '../addin/core';
import type { Family, Quantity } from '../addin/core';

/**
 * A canonical value (L, g, L/min, m) in the unit that the user writes it in.
 *
 * @throws RangeError for a unit that is not known: units are checked where they are read
 * @example inUnitWords(litres(227.12), 'gal') // '60 gal'
 */
export const inUnitWords = (canonical: Quantity<Family>, token: string): string => {
  const unit = findUnit(token);
  if (unit === undefined) throw new RangeError(`The unit ${token} is not known.`);
  return `${shortNumber(fromCanonical(canonical, unit))} ${unit.token}`;
};

/**
 * A number as an answer says it: three figures, thousands apart.
 *
 * @example shortNumber(2.6142) // '2.61'
 */
export const shortNumber = (n: number): string =>
  Math.abs(n) >= 100
    ? numberInWords(Math.round(n))
    : n.toLocaleString('en-US', { maximumSignificantDigits: 3 });

/** @example percentWords(0.00875) // '0.9 %' */
export const percentWords = (share: number): string =>
  `${(share * 100).toLocaleString('en-US', { maximumFractionDigits: 1 })} %`;

/** @example plural(4, 'fill') // '4 fills' */
export const plural = (n: number, one: string, many = `${one}s`): string =>
  `${n.toLocaleString('en-US')} ${n === 1 ? one : many}`;
