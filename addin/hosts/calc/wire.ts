import type { RawArgument } from '../../../functions';

/** What the component and the engine say to each other: one JSON value a line, over the engine's stdin and stdout. */

/**
 * An argument as Calc hands it over: a number, a text, null where it was left out, rows of cells, or rows of cells
 * whose blank rows at the end were left out.
 */
export type WireArgument =
  RawArgument | { readonly rows: readonly (readonly (number | string)[])[]; readonly height: number };

/** A cell asks for the value of a function. */
export interface FunctionCall {
  readonly id: number;
  readonly call: string;
  readonly args: readonly WireArgument[];
}

/** One value, rows, or the number of a Calc error. */
export type FunctionAnswer =
  | { readonly id: number; readonly value: number | string }
  | { readonly id: number; readonly rows: readonly (readonly (number | string)[])[] }
  | { readonly id: number; readonly code: number };
