import fc from 'fast-check';

import { knownUnits } from '../../addin/core';
import type { FunctionEntry, ParameterEntry, RawArgument, RawScalar } from '../../functions';

/** Ranges of a few such cells. */
export const rangeOf = (cell: fc.Arbitrary<RawScalar>): fc.Arbitrary<RawScalar[][]> =>
  fc
    .integer({ min: 1, max: 3 })
    .chain((columns) =>
      fc.array(fc.array(cell, { minLength: columns, maxLength: columns }), { minLength: 1, maxLength: 5 }),
    );

const RATES = ['tbsp/gal', 'mL/L', 'g/L', 'oz/100 gal', 'lb/1000 imp gal'];

const word = (parameter: ParameterEntry): fc.Arbitrary<string> => {
  const tokens = (parameter.units ?? []).flatMap((kind) => (kind === 'rate' ? RATES : knownUnits(kind)));
  if (tokens.length > 0) return fc.constantFrom(...tokens);
  return fc.constantFrom('P2O5', 'P', 'K2O', 'K', 'in', 'plus', 'full', 'equal');
};

/** Numbers that a garden has: amounts and volumes, shares, per cents. */
const gardenNumber = fc.oneof(
  fc.double({ min: 1e-3, max: 1e4, noNaN: true }),
  fc.double({ min: 0.01, max: 1, noNaN: true }),
  fc.integer({ min: 0, max: 100 }),
);

/** Names that meet in a list often enough. */
const bed = fc.constantFrom('Gate', 'North fence', ' gate ', 'Arch', 'Pots', 'Island', 3, '');
const OF_NAMES = /^(name|names|cells)$/;

/** What a parameter asks for. */
export const fitting = (parameter: ParameterEntry): fc.Arbitrary<RawArgument> => {
  if (OF_NAMES.test(parameter.name)) return parameter.range ? rangeOf(bed) : bed;
  if (parameter.range) return rangeOf(fc.oneof(gardenNumber, fc.constant('')));
  const given: fc.Arbitrary<RawArgument> = parameter.type === 'text' ? word(parameter) : gardenNumber;
  return parameter.optional ? fc.oneof(given, fc.constant(null)) : given;
};

/** Calls of a function, argument by argument. */
export const callsOf = (
  entry: FunctionEntry,
  argument: (parameter: ParameterEntry) => fc.Arbitrary<unknown>,
) => fc.tuple(...entry.parameters.map(argument)) as fc.Arbitrary<RawArgument[]>;
