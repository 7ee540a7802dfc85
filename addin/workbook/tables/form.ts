import type { Refusal, System } from '../../core';
import { orList, type Ask, type Entry, type HeldBy, type Holds } from '../fields/holds';
import { usualUnit } from '../fields/usualUnits';

type StartValue = string | number;

interface LineLook {
  /** Workbook name of the value's cell; that of a unit beside it ends in `_unit`. */
  readonly name: string;
  readonly label: string;
  /** What it is, on the sheet. */
  readonly what: string;
  readonly format?: string;
  /** Words beside the value, where its unit is not the user's to choose. */
  readonly unit?: string;
}

/** One line of a form, declared once: what it holds, what people see of it, and how the pane asks for it. */
export type Line = LineLook &
  (
    | {
        readonly holds: Holds;
        /** Where the sheet works the value out; a value typed over it is taken instead. */
        readonly formula?: string;
        /** What stands there in a new garden. */
        readonly start?: StartValue | Readonly<Record<System, StartValue>>;
        readonly ask?: Ask;
      }
    // A line that only the sheet works out: nothing is read of it, and the pane cannot ask it.
    | { readonly formula: string; readonly holds?: never; readonly start?: never; readonly ask?: never }
  );

export type Lines = Readonly<Record<string, Line>>;

/** A sheet of single values. Each value is found by its workbook name, so that lines may be moved about. */
export interface Form<L extends Lines = Lines> {
  readonly key: string;
  /** Workbook name of the header row. */
  readonly name: string;
  readonly title: string;
  readonly purpose: string;
  readonly place: Refusal['place'];
  /** True where a line that the user deleted is told as a problem, because a blank there would be a guess. */
  readonly complete: boolean;
  /** In the order of the sheet. */
  readonly lines: L;
}

/** What a form holds, by the keys of its lines. */
export type FormRow<F extends Form> = HeldBy<F['lines'], Entry>;

/** Keeps the types of a form's lines. */
export const defineForm = <const L extends Lines>(form: Form<L>): Form<L> => form;

export const linesOf = (form: Form): [string, Line][] => Object.entries(form.lines);

/** Workbook name of the unit beside a line's value, where the user chooses it. */
export const unitName = ({ name, holds }: Line): string | undefined =>
  holds?.kind === 'measure' ? `${name}_unit` : undefined;

/** Value and unit that a line starts with. */
export const startOf = ({ start, holds, unit }: Line, measures: System) => ({
  value: typeof start === 'object' ? start[measures] : start,
  unit: holds?.kind === 'measure' ? usualUnit(measures, holds.of) : unit,
});

/** Words that a line or a column offers to choose from, and what the sheet says beside them. */
export const offered = (
  holds: Holds | undefined,
): { source: readonly string[]; message: string } | undefined => {
  const source =
    holds?.kind === 'choice' ? holds.choices : holds?.kind === 'yesNo' ? ['yes', 'no'] : undefined;
  return source && { source, message: `Choose ${orList(source)}.` };
};

export const FORM_HEADERS = ['What', 'Value', 'Unit', 'What it is'] as const;
export const FORM_WIDTHS = [30, 14, 12, 70] as const;

/** A value of a form as it is kept. */
export interface LineValue {
  readonly value?: unknown;
  readonly unit?: string;
}

/** A row of a form as its lines keep it; a line that is not in the row stays as it is. */
export const lineValues = (
  form: Form,
  row: Readonly<Record<string, unknown>>,
): Readonly<Record<string, LineValue>> =>
  Object.fromEntries(
    linesOf(form).flatMap(([key, { holds }]) => {
      if (!(key in row) || !holds) return [];
      if (holds.kind !== 'measure') return [[key, { value: row[key] }]];
      const { value, unit } = row[key] as Entry;
      return [[key, { value, ...(unit === '' ? {} : { unit }) }]];
    }),
  );
