import type { RawArgument, RawScalar } from './definition';
import { NAMESPACE } from './definition';

const isErrorValue = (raw: RawScalar): raw is { readonly error: string } =>
  typeof raw === 'object' && raw !== null;

const literal = (raw: RawScalar): string => {
  if (raw === null || raw === undefined) return '';
  if (typeof raw === 'string') return `"${raw.replaceAll('"', '""')}"`;
  if (typeof raw === 'boolean') return raw ? 'TRUE' : 'FALSE';
  return isErrorValue(raw) ? raw.error : String(raw);
};

/**
 * A call as a formula text: English names, commas between arguments, array constants for ranges.
 *
 * @example formulaOf('DOSE', [15, 2.8, 'gal/min', 'gal']) // '=FEED.DOSE(15,2.8,"gal/min","gal")'
 */
export const formulaOf = (name: string, args: readonly RawArgument[]): string => {
  const told = args.map((raw) =>
    Array.isArray(raw)
      ? `{${raw.map((row: readonly RawScalar[]) => row.map(literal).join(',')).join(';')}}`
      : literal(raw as RawScalar),
  );
  return `=${NAMESPACE}.${name}(${told.join(',')})`;
};
