import type { PaneEvent } from '../../../taskpane/view';
import type { RefusalReason } from './componentRefused';

/** What the component and the engine say to each other: one JSON value a line, over the engine's stdin and stdout. */

/** A long range without the blank rows at its end; `height` counts them. */
export interface LongRange {
  /**
   * Its cells row by row, eight bytes each, the lowest first, in base 64. Where a cell holds no number there is one
   * that is none: the low bits are 1, or the number of a Calc error.
   */
  readonly numbers: string;
  /** Texts of cells, by their number in the range. */
  readonly texts: readonly (readonly [at: number, text: string])[];
  readonly width: number;
  readonly height: number;
}

/** An error that Calc hands over. */
export interface WireError {
  readonly code: number;
}

export type WireScalar = number | string | null | WireError;

/** An argument as Calc hands it over: a number, a text, null where it was left out, rows of cells, or a long range. */
export type WireArgument = WireScalar | readonly (readonly WireScalar[])[] | LongRange;

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

/** A document's pane is wanted; its language and region are the office's, such as "en-US". */
export interface OpenPane {
  readonly doc: string;
  readonly open: { readonly locale: string };
}

/** The user did something in a document's pane or in the document. Answered with `done` when all of it is done. */
export interface PaneHappening {
  readonly id?: number;
  readonly doc: string;
  readonly event: PaneEvent;
}

/** The component's answer to what the engine asked of it. */
export interface ComponentAnswer {
  readonly answer: number;
  readonly value?: unknown;
  readonly refused?: RefusalReason;
  /** The component's own words where it failed; for the log. */
  readonly failed?: string;
}

export interface ClosePane {
  readonly doc: string;
  readonly close: true;
}

export type ToEngine = FunctionCall | OpenPane | PaneHappening | ComponentAnswer | ClosePane;
