import { catalogue, type FunctionEntry, type ResultValue } from '../../../functions';

import { asCellError, rawArgument } from './cellErrors';
import type { RecentCalls } from './recentCalls';

/** A function as the program calls it: the declared arguments, then the invocation. */
export type WorksheetFunction = (...given: readonly unknown[]) => ResultValue;

/**
 * A catalogue entry as a worksheet function.
 *
 * @throws CustomFunctions.Error with the sentence that the error's card shows
 */
export const worksheetFunction =
  (entry: FunctionEntry, recent: RecentCalls): WorksheetFunction =>
  (...given) => {
    const args = given.slice(0, entry.parameters.length).map(rawArgument);
    const invocation = given[entry.parameters.length] as CustomFunctions.Invocation | undefined;
    const outcome = entry.evaluate(args);
    recent.note(invocation?.address, { name: entry.name, args, outcome });
    if ('error' in outcome) throw asCellError(outcome);
    return outcome.value;
  };

/** Every function by its id in functions.json. */
export const worksheetFunctions = (recent: RecentCalls): Record<string, WorksheetFunction> =>
  Object.fromEntries(catalogue.map((entry) => [entry.name, worksheetFunction(entry, recent)]));

/** Tells the program which function is which; false where it takes none yet. */
export const associateFunctions = (recent: RecentCalls): boolean => {
  if (typeof CustomFunctions === 'undefined') return false;
  CustomFunctions.associate(worksheetFunctions(recent));
  return true;
};
