import * as z from 'zod';
import type { PaneEvent } from '../../../../taskpane/view';

import { list, whole } from './parts';

/** The pane's own; the component hands it back as it came, or one of its own. */
export const paneEvent = z.custom<PaneEvent>(
  (told) => typeof told === 'object' && told !== null && 'kind' in told,
);

const tone = z.enum([
  'title',
  'answer',
  'heading',
  'label',
  'plain',
  'quiet',
  'warning',
  'good',
  'error',
  'news',
]);
export type Tone = z.infer<typeof tone>;

const nativeButton = z
  .strictObject({
    key: z.string(),
    label: z.string(),
    /** Shown when pointed at. */
    help: z.string().optional(),
    event: paneEvent,
    primary: z.boolean().optional(),
    current: z.boolean().optional(),
    disabled: z.boolean().optional(),
  })
  .meta({ id: 'Button' });
export type NativeButton = z.infer<typeof nativeButton>;

const field = {
  key: z.string(),
  field: z.string(),
  label: z.string(),
  /** Read aloud in place of the label. */
  spoken: z.string(),
  value: z.string(),
  disabled: z.boolean().optional(),
};

const choice = { ...field, values: list(z.string()), shown: list(z.string()) };

const nativeChoice = z.strictObject(choice).meta({ id: 'Choice' });
export type NativeChoice = z.infer<typeof nativeChoice>;

/** The same picture for panels of several widths, pixels, the narrowest first. */
const drawn = z.strictObject({ width: whole, svg: z.string() }).meta({ id: 'Drawn' });

const column = z.strictObject({ label: z.string(), numeric: z.boolean() }).meta({ id: 'Column' });

/** What every piece has; `indent` counts levels of folding. */
const shared = { key: z.string(), indent: whole };

/** One thing that Calc draws with a control of its own, from top to bottom. */
export const piece = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('text'), ...shared, tone, text: z.string() }),
  z.strictObject({
    kind: z.literal('entry'),
    ...shared,
    ...field,
    help: z.string().optional(),
    /** True for words, which need more room than a number. */
    words: z.boolean().optional(),
    unit: z.union([z.string(), nativeChoice]).optional(),
  }),
  z.strictObject({ kind: z.literal('choice'), ...shared, ...choice }),
  z.strictObject({
    kind: z.literal('toggle'),
    ...shared,
    field: z.string(),
    label: z.string(),
    on: z.boolean(),
    disabled: z.boolean().optional(),
  }),
  z.strictObject({ kind: z.literal('buttons'), ...shared, buttons: list(nativeButton) }),
  z.strictObject({
    kind: z.literal('table'),
    ...shared,
    label: z.string(),
    columns: list(column),
    rows: list(list(z.string())),
  }),
  z.strictObject({ kind: z.literal('picture'), ...shared, label: z.string(), drawn: list(drawn) }),
  z.strictObject({ kind: z.literal('progress'), ...shared, label: z.string(), share: z.number() }),
  z.strictObject({ kind: z.literal('rule'), ...shared }),
]);
export type Piece = z.infer<typeof piece>;

/** The pane as Calc draws it. */
export const nativeView = z.strictObject({ section: z.string(), pieces: list(piece) }).meta({ id: 'View' });
export type NativeView = z.infer<typeof nativeView>;
