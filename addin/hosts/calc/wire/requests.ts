import * as z from 'zod';

import { operation } from './operations';
import { corner, list, place, whole, wireArea } from './parts';

/** What a change touches, and so the locks that count. */
const touched = z
  .strictObject({ workbook: z.boolean(), structure: z.boolean(), sheets: list(z.string()) })
  .meta({ id: 'Touched' });

/** The stamp that areas must still have. */
const seen = z.strictObject({ areas: list(wireArea), stamp: z.string() }).meta({ id: 'Seen' });

/** What the engine asks of the component about one document. */
export const request = z.discriminatedUnion('what', [
  z.strictObject({ what: z.literal('read'), areas: list(wireArea), singly: z.boolean() }),
  z.strictObject({
    what: z.literal('apply'),
    title: z.string(),
    touched,
    operations: list(operation),
    seen: seen.optional(),
  }),
  z.strictObject({ what: z.literal('undo') }),
  z.strictObject({ what: z.literal('selected') }),
  z.strictObject({ what: z.literal('print'), sheet: z.string() }),
]);

export type WorkbookRequest = z.infer<typeof request>;

/** Sheets with the cells in use, names, and the active sheet. */
const outline = z.strictObject({
  sheets: list(z.strictObject({ name: z.string(), rows: whole, columns: whole, merges: list(corner) })),
  names: z.record(z.string(), wireArea),
  active: z.string(),
});

/** An area's cells; rows and columns count from the sheet's corner. */
const cells = z.strictObject({
  /** The part of the area that holds anything, which is what is told of. */
  used: corner,
  values: list(list(z.union([z.string(), z.number(), z.null()]))),
  /** Row, column, formula. */
  formulas: list(z.tuple([whole, whole, z.string()]).readonly()),
  /**
   * Formulas of columns whose first one, copied down, is all the others: row, column, rows, the first and the last
   * formula.
   */
  copied: list(z.tuple([whole, whole, whole, z.string(), z.string()]).readonly()),
  /** Row, column, the number of a Calc error. */
  errors: list(z.tuple([whole, whole, whole]).readonly()),
  /** Areas whose numbers are shown as TRUE and FALSE. */
  truths: list(corner),
});

/** A document at one moment. */
const look = z.strictObject({
  outline,
  /** One for each area; null where nothing is in it. */
  cells: list(cells.nullable()),
  /** Another one where a user's hand changed sheets, names or cells of the areas. */
  stamp: z.string(),
});

/** What stands in the way: locks, or that the document was edited since it was seen; where nothing does, all was written. */
const inTheWay = z.strictObject({
  readOnly: z.boolean(),
  structure: z.boolean(),
  sheets: list(z.string()),
  moved: z.boolean(),
});

/** The selected cell; null where it holds no formula. */
const selected = z
  .strictObject({
    ...place,
    typed: z.string(),
    shows: z.string(),
    /** The words for why the cells' engine does not answer, where that is what is wrong. */
    why: z.string().exactOptional(),
  })
  .nullable();

/** What the component answers to each request. */
const ANSWERS = {
  read: look,
  apply: inTheWay,
  undo: z.null(),
  selected,
  print: z.null(),
} satisfies Readonly<Record<WorkbookRequest['what'], z.ZodType>>;

type Answers = { readonly [What in keyof typeof ANSWERS]: z.infer<(typeof ANSWERS)[What]> };

export type WireOutline = z.infer<typeof outline>;
export type WireCells = z.infer<typeof cells>;

/** Asks the component; the promise is refused with a `ComponentRefused`, or with the component's own words where it failed. */
export type Ask = <What extends WorkbookRequest['what']>(
  request: Extract<WorkbookRequest, { what: What }>,
) => Promise<Answers[What]>;

/** The component's answer to a request. @throws ZodError where it is none */
export const readAnswer = <What extends WorkbookRequest['what']>(what: What, value: unknown): Answers[What] =>
  ANSWERS[what].parse(value) as Answers[What];
