import { catalogue } from './catalogue';
import type { FunctionEntry, Outcome, RawArgument, Refused, Working } from './definition';
import { NAMESPACE } from './definition';
import { argumentsNotAList, noSuchFunction } from './sentences';

const BY_NAME: ReadonlyMap<string, FunctionEntry> = new Map(catalogue.map((entry) => [entry.name, entry]));
const PREFIX = `${NAMESPACE}.`;

/**
 * The function of a name, with or without the namespace, in any case.
 *
 * @example findFunction('feed.dilute')?.name // 'DILUTE'
 */
export const findFunction = (name: unknown): FunctionEntry | undefined => {
  if (typeof name !== 'string') return undefined;
  const found = BY_NAME.get(name);
  if (found) return found;
  const plain = name.trim().toUpperCase();
  return BY_NAME.get(plain.startsWith(PREFIX) ? plain.slice(PREFIX.length) : plain);
};

const namesKnown = (): readonly string[] => catalogue.map((entry) => entry.name);

/**
 * Calls a worksheet function as a cell would. Never throws, whatever it is given.
 *
 * @param name with or without the namespace, in any case; an unknown one is `#NAME?`
 * @param args in the order of the contract: null is left out, '' a blank cell, an array of rows a range
 * @returns a finite value, or an error with a sentence (without one where an argument was an error value)
 * @example call('DILUTE', [1, 'tbsp/gal', 60, 'gal', 'cup']) // { value: 3.75 }
 */
export const call = (name: string, args: readonly RawArgument[]): Outcome => {
  const entry = findFunction(name);
  if (!entry) return noSuchFunction(name, namesKnown());
  return Array.isArray(args) ? entry.evaluate(args) : argumentsNotAList(args);
};

/**
 * The same call told in steps with units and source, or the reason why there is no value. Never throws.
 *
 * @example explain('DILUTE', [1, 'tbsp/gal', 60, 'gal', 'cup']) // steps: '60 gal × 1 tbsp/gal = 60 tbsp', …
 */
export const explain = (name: string, args: readonly RawArgument[]): Working | Refused => {
  const entry = findFunction(name);
  if (!entry) return noSuchFunction(name, namesKnown());
  return Array.isArray(args) ? entry.explain(args) : argumentsNotAList(args);
};
