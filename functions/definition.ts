import type { Family } from '../addin/core';

/** An error value as a cell shows it, such as '#DIV/0!'. */
export interface ErrorCell {
  readonly error: string;
}

/** One cell or literal as a host hands it over: null is an argument left out, '' a blank cell. */
export type RawScalar = number | string | boolean | null | undefined | ErrorCell;

/** One argument: a scalar, or a range as rows of cells. */
export type RawArgument = RawScalar | readonly (readonly RawScalar[])[];

/** What a cell can show: one value, or rows for an array function. */
export type ResultValue = number | string | readonly (readonly (number | string)[])[];

/** Why there is no value. An error that came in as an argument goes out without a sentence. */
export interface Refused {
  readonly error: string;
  /** Names the argument, what was given and what is allowed. */
  readonly sentence?: string;
}

export type Outcome = { readonly value: ResultValue } | Refused;

/** One line of a working, in plain English with its units: "60 gal × 1 tbsp/gal = 60 tbsp". */
export interface Step {
  readonly text: string;
  /** Where the step's formula or figure comes from, where it is not the function's own source. */
  readonly source?: string;
}

/** The same computation as the value, told so that it can be followed by hand. */
export interface Working {
  readonly name: string;
  readonly summary: string;
  /** What each argument was, in the order of the call; "left out" for an optional one not given. */
  readonly arguments: readonly { readonly name: string; readonly given: string }[];
  readonly steps: readonly Step[];
  readonly value: ResultValue;
  readonly source: string;
}

export interface ParameterEntry {
  /** As in the contract: lower case, words joined by underscores. */
  readonly name: string;
  readonly description: string;
  /** What one value of it is; 'any' for a range, whose cells may be blank. */
  readonly type: 'number' | 'text' | 'any';
  readonly optional: boolean;
  /** True where a range of cells is expected; a single cell serves too. */
  readonly range: boolean;
  /** What is allowed, as the error sentence says it: "0 or more", "a volume unit". */
  readonly allowed: string;
  /** The kinds of unit that a unit argument names. */
  readonly units?: readonly (Family | 'rate')[];
  /** What a left-out optional argument counts as, in words. */
  readonly otherwise?: string;
}

export interface ExampleEntry {
  readonly args: readonly RawArgument[];
  readonly answer: ResultValue;
}

export interface FunctionEntry {
  /** Without the namespace, in capitals. */
  readonly name: string;
  /** One line, a sentence without a full stop. */
  readonly summary: string;
  readonly parameters: readonly ParameterEntry[];
  readonly result: { readonly kind: 'number' | 'text' | 'rows'; readonly description: string };
  /** Refusals besides those that every function shares, each a sentence. */
  readonly errors: readonly string[];
  /** At least one; each runs as a test in every host. */
  readonly examples: readonly ExampleEntry[];
  /** Source of the formula: title, publisher, number or year; or that it is a definition. */
  readonly source: string;
  /** Never throws; the value is finite. */
  readonly evaluate: (args: readonly RawArgument[]) => Outcome;
  /** The value with its steps, or the same refusal as `evaluate`. */
  readonly explain: (args: readonly RawArgument[]) => Working | Refused;
}

/** The namespace of every function, in formulas before the dot. */
export const NAMESPACE = 'FEED';
