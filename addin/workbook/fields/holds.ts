import type * as z from 'zod';
import { choiceCell, numberCell, optional, remarkCell, textCell, unitCell, yesNoCell } from './cellValue';
import { findUnit } from '../../core';
import { rangeIn, type NumberRange } from './range';
import { unitKind, type MeasureName } from './usualUnits';

/** A number with a unit that the user chooses. Its range is in the canonical unit of the family. */
export interface Measure {
  readonly kind: 'measure';
  readonly range: NumberRange;
  readonly of: MeasureName;
}

interface Numeric<Value> {
  readonly kind: 'number';
  readonly range: NumberRange;
  readonly schema: z.ZodType<Value>;
}

/** What one cell holds: how it is read, and what the pane has to know to ask for it. */
export type Single<Value> =
  | Numeric<Value>
  | { readonly kind: 'choice'; readonly choices: readonly string[]; readonly schema: z.ZodType<Value> }
  /** `allowed` where it may not be blank: what is allowed, as the end of "use …". */
  | { readonly kind: 'text'; readonly allowed?: string; readonly schema: z.ZodType<Value> }
  | { readonly kind: 'yesNo' | 'unit'; readonly schema: z.ZodType<Value> };

/** What a line of a form or a column of a table holds. */
export type Holds = Single<unknown> | Measure;

/** A value with its unit. */
export interface Measured {
  readonly value: number;
  readonly unit: string;
}

/** A line with a unit, whose value may still be blank. */
export interface Entry {
  readonly value?: number;
  readonly unit: string;
}

/** The value that a declaration holds; a measure comes to `M`. */
export type ValueOf<Declared, M> = Declared extends { readonly holds: Measure }
  ? M
  : Declared extends { readonly holds: { readonly schema: z.ZodType<infer Value> } }
    ? Value
    : never;

type Held<Declared, M> = {
  readonly [Key in keyof Declared as Declared[Key] extends { readonly holds: Holds } ? Key : never]: ValueOf<
    Declared[Key],
    M
  >;
};

/** What may be blank may be left out. */
type Loose<Row> = {
  readonly [Key in keyof Row as undefined extends Row[Key] ? never : Key]: Row[Key];
} & { readonly [Key in keyof Row as undefined extends Row[Key] ? Key : never]?: Row[Key] };

/** What the declarations hold together, by key. */
export type HeldBy<Declared, M> = Loose<Held<Declared, M>>;

// What a declaration may say that it holds. Each may be blank unless its name says otherwise.

export const number = (range: NumberRange = {}, words?: string): Numeric<number | undefined> => ({
  kind: 'number',
  range,
  schema: optional(numberCell(range, words)),
});

export const neededNumber = (range: NumberRange, words?: string): Numeric<number> => ({
  kind: 'number',
  range,
  schema: numberCell(range, words),
});

export const measure = (of: MeasureName, range: NumberRange): Measure => ({ kind: 'measure', of, range });

/** Words of any kind, '' where blank. */
export const remark: Single<string> = { kind: 'text', schema: remarkCell };

/** A name or a few words, never blank. */
export const neededText = (allowed: string): Single<string> => ({
  kind: 'text',
  allowed,
  schema: textCell(allowed),
});

export const yesNo: Single<boolean | undefined> = { kind: 'yesNo', schema: optional(yesNoCell) };

/** 'a, b and c', as sentences tell several things. */
export const andList = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;

/** 'a, b or c', as sentences offer words to choose from. */
export const orList = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} or ${words.at(-1)}`;

export const choice = <Choice extends string>(
  ...choices: readonly [Choice, ...Choice[]]
): Single<Choice | undefined> => ({
  kind: 'choice',
  choices,
  schema: optional(choiceCell(choices, orList(choices))),
});

/** One of a few; blank counts as the first. */
export const firstOf = <Choice extends string>(
  ...choices: readonly [Choice, ...Choice[]]
): Single<Choice> => ({
  kind: 'choice',
  choices,
  schema: choice(...choices).schema.transform((chosen) => chosen ?? choices[0]),
});

export const neededChoice = <Choice extends string>(
  ...choices: readonly [Choice, ...Choice[]]
): Single<Choice> => ({ kind: 'choice', choices, schema: choiceCell(choices, orList(choices)) });

/** What a measure's number may be beside a unit; only its sign counts while there is none. */
export const rangeBeside = ({ of, range }: Measure, token = ''): NumberRange => {
  const kind = unitKind(of);
  if (kind === 'rate' || kind === 'pack') return range;
  const unit = findUnit(token, kind);
  if (unit) return rangeIn(range, unit);
  return range.above === undefined && !((range.least ?? 0) > 0) ? { least: 0 } : { above: 0 };
};

/** The unit beside a measure. */
export const unitOf = (of: MeasureName): Single<string | undefined> => ({
  kind: 'unit',
  schema: optional(unitCell(unitKind(of))),
});

export const neededUnit = (of: MeasureName): Single<string> => ({
  kind: 'unit',
  schema: unitCell(unitKind(of)),
});

/** How the pane asks for what is held. */
export interface Ask {
  /** What the pane calls it; {key} stands for what its row holds there. */
  readonly label: string;
  readonly help?: string;
  /** Heading of the group of fields that it stands in; '' for the first. Within a group, as on the sheet. */
  readonly under: string;
  /** True where nothing is kept while it is blank. */
  readonly needed?: boolean;
  /** Shown after the field; `MONEY` for the garden's currency. */
  readonly unit?: string;
  /** So many times what the sheet holds is asked: 100 for a share in per cent. */
  readonly times?: number;
  /** What choices are called in the pane, where not by their own words. */
  readonly called?: Readonly<Record<string, string>>;
  /** Asked only where the row holds this. */
  readonly when?: Readonly<Record<string, string>>;
}

export const MONEY = 'money';
