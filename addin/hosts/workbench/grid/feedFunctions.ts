import { ArrayValueObject, FunctionType, type IFunctionInfo } from '@univerjs/preset-sheets-core';

import type { FunctionEntry, RawArgument, RawScalar } from '../../../../functions';
import { catalogue, NAMESPACE } from '../../../../functions';
import { ERRORS } from './cells';
import { fillMissingRows } from './missingRows';
import type { Grid } from './openGrid';

const scalar = (value: unknown): RawScalar => {
  if (typeof value === 'string') return ERRORS.has(value) ? { error: value } : value;
  return typeof value === 'number' || typeof value === 'boolean' ? value : null;
};

/** An argument as the grid hands it over: a reference is rows of cells, even for one cell; a literal is one value. */
export const rawArgument = (value: unknown): RawArgument =>
  Array.isArray(value)
    ? value.map((row) => (Array.isArray(row) ? row.map(scalar) : [scalar(row)]))
    : scalar(value);

fillMissingRows(ArrayValueObject);

const described = (entry: FunctionEntry): IFunctionInfo => ({
  functionName: `${NAMESPACE}.${entry.name}`,
  functionType: FunctionType.User,
  description: `${entry.summary}. ${entry.result.description}`,
  abstract: entry.summary,
  functionParameter: entry.parameters.map(({ name, description, optional }, index) => ({
    name,
    detail: description,
    example: String(entry.examples[0]?.args[index] ?? ''),
    require: optional ? 0 : 1,
    repeat: 0,
  })),
});

/**
 * Gives the grid the FEED functions. They never throw into it: one throw would stop every formula until the page is
 * loaded again.
 */
export const registerFeedFunctions = (grid: Grid): void => {
  const evaluate = (
    entry: FunctionEntry,
    given: readonly unknown[],
  ): number | string | (number | string)[][] => {
    try {
      const outcome = entry.evaluate(given.map(rawArgument));
      if ('error' in outcome) return outcome.error;
      return typeof outcome.value === 'object' ? outcome.value.map((row) => [...row]) : outcome.value;
    } catch (reason) {
      console.error(`${NAMESPACE}.${entry.name} failed.`, reason);
      return '#VALUE!';
    }
  };
  const formulas = grid.api.getFormula();
  for (const entry of catalogue)
    formulas.registerFunction(
      `${NAMESPACE}.${entry.name}`,
      (...given: unknown[]) => evaluate(entry, given) as never,
      { description: described(entry) },
    );
};
