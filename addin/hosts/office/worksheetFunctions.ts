import { catalogue, type FunctionEntry, type ResultValue } from '../../../functions';

import { asCellError, rawArgument } from './cellErrors';

/** A function as the program calls it: the declared arguments, then the invocation. */
export type WorksheetFunction = (...given: readonly unknown[]) => ResultValue;

/**
 * A catalogue entry as a worksheet function.
 *
 * @throws CustomFunctions.Error with the sentence that the error's card shows
 */
export const worksheetFunction =
  (entry: FunctionEntry): WorksheetFunction =>
  (...given) => {
    const outcome = entry.evaluate(given.slice(0, entry.parameters.length).map(rawArgument));
    if ('error' in outcome) throw asCellError(outcome);
    return outcome.value;
  };

/** Every function by its id in functions.json. */
export const worksheetFunctions = (): Record<string, WorksheetFunction> =>
  Object.fromEntries(catalogue.map((entry) => [entry.name, worksheetFunction(entry)]));

/** Tells the program which function is which; false where it takes none yet. */
export const associateFunctions = (): boolean => {
  if (typeof CustomFunctions === 'undefined') return false;
  CustomFunctions.associate(worksheetFunctions());
  return true;
};
