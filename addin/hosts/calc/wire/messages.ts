import * as z from 'zod';

import { REFUSALS } from '../componentRefused';

import { list, whole } from './parts';
import { paneEvent } from './pieces';

/** What the component and the engine say to each other: one JSON value a line, over the engine's stdin and stdout. */

/** A long range without the blank rows at its end; `height` counts them. */
const longRange = z.strictObject({
  /**
   * Its cells row by row, eight bytes each, the lowest first, in base 64. Where a cell holds no number there is one
   * that is none: the low bits are 1, or the number of a Calc error.
   */
  numbers: z.string(),
  /** Texts of cells, by their number in the range. There may be thousands a call: each is taken as it comes. */
  texts: z.custom<readonly (readonly [at: number, text: string])[]>(Array.isArray),
  width: whole,
  height: whole,
});
export type LongRange = z.infer<typeof longRange>;

/** A number, a text, null where it was left out, or an error that Calc hands over. */
const wireScalar = z.union([z.number(), z.string(), z.null(), z.strictObject({ code: whole })]);
export type WireScalar = z.infer<typeof wireScalar>;

/** An argument as Calc hands it over: one value, rows of cells, or a long range. */
const wireArgument = z.union([wireScalar, list(list(wireScalar)), longRange]);
export type WireArgument = z.infer<typeof wireArgument>;

/** A cell asks for the value of a function. */
const functionCall = z.strictObject({ id: whole, call: z.string(), args: list(wireArgument) });
export type FunctionCall = z.infer<typeof functionCall>;

/** One value, rows, or the number of a Calc error. */
export type FunctionAnswer =
  | { readonly id: number; readonly value: number | string }
  | { readonly id: number; readonly rows: readonly (readonly (number | string)[])[] }
  | { readonly id: number; readonly code: number };

/** A document's pane is wanted; its language and region are the office's, such as "en-US". */
const openPane = z.strictObject({ doc: z.string(), open: z.strictObject({ locale: z.string() }) });

/** The user did something in a document's pane or in the document. Answered with `done` when all of it is done. */
const paneHappening = z.strictObject({ id: whole.optional(), doc: z.string(), event: paneEvent });
export type PaneHappening = z.infer<typeof paneHappening>;

/** The component's answer to what the engine asked of it. */
const componentAnswer = z.strictObject({
  answer: whole,
  value: z.unknown().optional(),
  refused: z.enum(REFUSALS).optional(),
  /** The component's own words where it failed; for the log. */
  failed: z.string().optional(),
});
export type ComponentAnswer = z.infer<typeof componentAnswer>;

const closePane = z.strictObject({ doc: z.string(), close: z.literal(true) });

/** What the component says. */
export const toEngine = z.union([functionCall, paneHappening, componentAnswer, openPane, closePane]);
export type ToEngine = z.infer<typeof toEngine>;
