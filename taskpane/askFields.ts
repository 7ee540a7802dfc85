import {
  MONEY,
  rangeBeside,
  type Ask,
  type Entry,
  type Holds,
  type Measured,
} from '../addin/workbook/fields/holds';
import { timesRange } from '../addin/workbook/fields/range';
import { unitChoices } from '../addin/workbook/fields/usualUnits';
import type { Settings } from '../addin/workbook/garden';
import type { Form } from '../addin/workbook/tables/form';
import type { Table } from '../addin/workbook/tables/table';

import { askChoice, askNumber, askText, askToggle, textOf, unitBeside, type Asked } from './asked';
import type { PaneState, SectionId } from './state';
import type { Field } from './view';

/** A row as it stands in the pane: what was typed over what the sheet holds. */
export interface AskedRow<Row> {
  readonly row: Row;
  /** What the sheet holds. */
  readonly known: Partial<Row>;
  /** The pane's fields that stand under a heading, in the order of the sheet. */
  readonly under: (heading: string) => readonly Field[];
  /** By key. */
  readonly answers: Readonly<Record<string, Asked<unknown>>>;
  /** The first fault as the fields stand in the pane, and the heading that its field stands under. */
  readonly fault?: { readonly sentence: string; readonly under: string };
}

interface Asking {
  readonly section: SectionId;
  /** What the ids of the fields begin with: 'rig.'. */
  readonly prefix: string;
  readonly settings: Settings;
  /** Headings in the order of the pane; one without a name where left out. */
  readonly headings?: readonly string[];
  /** The unit beside every number that is not a measure and declares none of its own. */
  readonly unit?: string;
  /** Keys that are needed for this row besides those that always are. */
  readonly needed?: readonly string[];
}

interface Declared {
  readonly holds?: Holds;
  readonly ask?: Ask;
  /** Words beside the value on the sheet. */
  readonly unit?: string;
}

type Row = Readonly<Record<string, unknown>>;

const filled = (label: string, row: Row): string =>
  label.replace(/\{(\w+)\}/g, (_, key: string) => String(row[key] ?? ''));

const measureAsked = (
  state: PaneState,
  known: Entry | Measured | undefined,
  holds: Extract<Holds, { kind: 'measure' }>,
  question: Parameters<typeof askNumber>[1],
  measures: Settings['measures'],
): Asked<unknown> => {
  const choices = unitChoices(measures, holds.of);
  const unit = { known: known?.unit || (choices[0] ?? ''), choices };
  const range = rangeBeside(holds, textOf(state, `${question.id}.unit`, unit.known));
  const asked = askNumber(state, { ...question, known: known?.value, unit, range });
  return { ...asked, value: { value: asked.value, unit: unitBeside(asked) } };
};

/** Asks for what a line or a column declares that it holds. */
const askField = (
  state: PaneState,
  key: string,
  declared: Declared & { readonly holds: Holds; readonly ask: Ask },
  known: Row,
  asking: Asking,
): Asked<unknown> => {
  const { holds, ask } = declared;
  const { section, prefix, settings } = asking;
  const question = {
    section,
    id: `${prefix}${key}`,
    label: filled(ask.label, known),
    required: ask.needed === true || asking.needed?.includes(key) === true,
    ...(ask.help === undefined ? {} : { help: ask.help }),
  };
  const value = known[key];
  switch (holds.kind) {
    case 'measure':
      return measureAsked(state, value as Entry | undefined, holds, question, settings.measures);
    case 'number': {
      const { times = 1 } = ask;
      const unit = ask.unit === MONEY ? settings.currency : (ask.unit ?? declared.unit ?? asking.unit);
      const asked = askNumber(state, {
        ...question,
        range: timesRange(
          { ...(holds.range.above === undefined ? { least: 0 } : {}), ...holds.range },
          times,
        ),
        ...(value === undefined ? {} : { known: (value as number) * times }),
        ...(unit === undefined ? {} : { unit }),
      });
      // What was not typed over keeps every digit.
      const untouched = state.typed[question.id] === undefined && asked.fault === undefined;
      return { ...asked, value: untouched ? value : asked.value && asked.value / times };
    }
    case 'choice': {
      const [first = ''] = holds.choices;
      const choices = holds.choices.map((one) => ({ value: one, label: ask.called?.[one] ?? one }));
      return askChoice(state, { ...question, known: String(value ?? first), choices });
    }
    case 'yesNo':
      return askToggle(state, { ...question, known: value === true });
    default: {
      const { allowed } = holds.kind === 'text' ? holds : {};
      const asked = askText(state, {
        ...question,
        known: String(value ?? ''),
        ...(allowed === undefined ? {} : { allowed }),
      });
      return { ...asked, value: asked.value ?? '' };
    }
  }
};

const askRow = <R>(
  state: PaneState,
  fields: Readonly<Record<string, Declared>>,
  known: Row,
  asking: Asking,
): AskedRow<R> => {
  const asked = Object.entries(fields).flatMap(([key, declared]) => {
    const { holds, ask } = declared;
    if (!holds || !ask) return [];
    return [{ key, ask, answer: askField(state, key, { ...declared, holds, ask }, known, asking) }];
  });
  const answers = Object.fromEntries(asked.map(({ key, answer }) => [key, answer]));
  const isShown = ({ when = {} }: Ask): boolean =>
    Object.entries(when).every(([key, value]) => answers[key]?.value === value);
  const { headings = [''] } = asking;
  const wrong = headings
    .flatMap((heading) => asked.filter(({ ask }) => ask.under === heading))
    .find(({ answer }) => answer.fault !== undefined);
  return {
    known: known as Partial<R>,
    row: { ...known, ...Object.fromEntries(asked.map(({ key, answer }) => [key, answer.value])) } as R,
    under: (heading) =>
      asked.flatMap(({ ask, answer }) => (ask.under === heading && isShown(ask) ? [answer.field] : [])),
    answers,
    ...(wrong?.answer.fault === undefined
      ? {}
      : { fault: { sentence: wrong.answer.fault, under: wrong.ask.under } }),
  };
};

/** Asks for the lines of a form that the pane asks; the others stay as they are. */
export const askForm = <R extends object>(
  state: PaneState,
  form: Form,
  row: R,
  asking: Asking,
): AskedRow<R> => askRow(state, form.lines, row as Row, asking);

/** Asks for the columns of a row that the pane asks; a measure without a number is blank. */
export const askTableRow = <R extends object>(
  state: PaneState,
  table: Table,
  row: Partial<R>,
  asking: Asking,
): AskedRow<R> => {
  const asked = askRow<R>(state, table.fields, row as Row, asking);
  const blank = (value: unknown) =>
    typeof value === 'object' && value !== null && (value as Entry).value === undefined ? undefined : value;
  return {
    ...asked,
    row: Object.fromEntries(Object.entries(asked.row as Row).map(([key, value]) => [key, blank(value)])) as R,
  };
};

/** The first fault among rows, in their order. */
export const faultIn = (rows: readonly AskedRow<unknown>[]): string | undefined =>
  rows.find(({ fault }) => fault !== undefined)?.fault?.sentence;
