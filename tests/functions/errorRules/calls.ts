import { expect } from 'vitest';
import { call, type RawArgument } from '../../../functions';

export type Call = readonly [name: string, ...args: RawArgument[]];

export const outcome = ([name, ...args]: Call) => call(name, args);
/** The call as a test's title tells it. */
export const told = ([name, ...args]: Call): string => `${name} ${JSON.stringify(args)}`;
/** Rows of a call and what is wanted of it, with the call told first. */
export const table = <R extends readonly unknown[]>(rows: readonly (readonly [Call, ...R])[]) =>
  rows.map(([made, ...rest]) => [told(made), made, ...rest] as const);

export const refused = (error: string, words: string) => ({
  error,
  sentence: expect.stringContaining(words),
});
