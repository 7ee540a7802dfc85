import * as z from 'zod';

import { list, place, whole, wireArea } from './parts';

const rows = <Of extends z.ZodType>(of: Of) => list(list(of));

/** A line around cells; widths in hundredths of a millimetre. */
const line = z.strictObject({
  Color: whole,
  OuterLineWidth: whole,
  InnerLineWidth: whole,
  LineDistance: whole,
});

const series = z.strictObject({ values: wireArea, colour: whole }).meta({ id: 'Series' });

const chart = z.strictObject({
  op: z.literal('chart'),
  id: z.string(),
  ...place,
  /** Hundredths of a millimetre. */
  width: whole,
  height: whole,
  type: z.enum(['bar', 'line']),
  title: z.string(),
  finding: z.string(),
  labels: wireArea,
  series: list(series),
});

const page = z.strictObject({
  op: z.literal('page'),
  area: wireArea,
  name: z.string(),
  landscape: z.boolean(),
  repeatRows: whole,
  /** 0: as many as it takes. */
  pagesHigh: whole,
  /** mm */
  margin: z.number(),
});

/** What the component does to a document, in its own small steps. */
export const operation = z.discriminatedUnion('op', [
  z.strictObject({ op: z.literal('sheet'), sheet: z.string() }),
  z.strictObject({
    op: z.literal('values'),
    area: wireArea,
    cells: rows(z.union([z.string(), z.number(), z.null()])),
  }),
  z.strictObject({ op: z.literal('truths'), area: wireArea, cells: rows(z.boolean()) }),
  z.strictObject({ op: z.literal('formulas'), area: wireArea, cells: rows(z.string()) }),
  /** A row of formulas that is copied down over the area. */
  z.strictObject({ op: z.literal('filled'), area: wireArea, formulas: list(z.string()) }),
  z.strictObject({ op: z.literal('format'), area: wireArea, format: z.string() }),
  /** `look` holds properties of a cell style of Calc. */
  z.strictObject({
    op: z.literal('look'),
    area: wireArea,
    name: z.string(),
    look: z.record(z.string(), z.union([z.number(), z.boolean(), line])),
  }),
  z.strictObject({
    op: z.literal('width'),
    sheet: z.string(),
    column: whole,
    columns: whole,
    characters: z.number(),
  }),
  z.strictObject({ op: z.literal('wrap'), area: wireArea }),
  z.strictObject({ op: z.literal('merge'), area: wireArea }),
  /** Entries as Calc takes them, or the cells that hold them. */
  z.strictObject({
    op: z.literal('list'),
    area: wireArea,
    message: z.string(),
    entries: z.string().optional(),
    source: wireArea.optional(),
  }),
  z.strictObject({ op: z.literal('name'), name: z.string(), area: wireArea }),
  z.strictObject({ op: z.literal('note'), ...place, text: z.string() }),
  chart,
  page,
  z.strictObject({ op: z.literal('freeze'), sheet: z.string(), rows: whole, columns: whole }),
  z.strictObject({ op: z.literal('active'), ...place }),
]);

export type Operation = z.infer<typeof operation>;
