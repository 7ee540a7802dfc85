import { inRange, rangeWords, type NumberRange } from '../addin/workbook/fields/range';

import { fieldNumber, readNumber } from './number';
import type { PaneState, SectionId } from './state';
import type { Field } from './view';

/** A field, and what its text comes to: a value, nothing where it was left blank, or the fault that it shows. */
export interface Asked<Value> {
  readonly field: Field;
  readonly value?: Value;
  readonly fault?: string;
}

interface Question {
  readonly section: SectionId;
  readonly id: string;
  readonly label: string;
  readonly help?: string;
}

/** What stands in a field: what was typed, else what is known. */
export const textOf = (state: PaneState, id: string, known: string): string => state.typed[id] ?? known;

export interface NumberQuestion extends Question {
  readonly known?: number;
  /** Significant figures in which the known number is shown; its value keeps all. */
  readonly figures?: number;
  /** Shown after the field, or chosen beside it. */
  readonly unit?: string | { readonly known: string; readonly choices: readonly string[] };
  /** 0 or more where left out. */
  readonly range?: NumberRange;
  readonly required?: boolean;
}

const NO_LESS_THAN_0: NumberRange = { least: 0 };

/** Figures with marks between them or a power of ten: a number, but in a form that is not read here. */
const OTHER_FIGURES = /^\d[\d.,' ]*(?:e\d+)?$/i;

const numberFault = (
  { label, range = NO_LESS_THAN_0, required }: NumberQuestion,
  text: string,
): string | undefined => {
  const given = text.trim();
  if (given === '') return required ? `${label}: nothing was given; use ${rangeWords(range)}.` : undefined;
  const value = readNumber(text);
  if (value !== undefined && inRange(value, range)) return undefined;
  const plainly =
    value === undefined && OTHER_FIGURES.test(given) ? ', in plain figures such as 1000 or 2.5' : '';
  return `${label}: “${given}” was given; use ${rangeWords(range, value)}${plainly}.`;
};

const unitOf = (state: PaneState, { id, unit }: NumberQuestion) => {
  if (unit === undefined || typeof unit === 'string') return unit;
  const value = textOf(state, `${id}.unit`, unit.known);
  const choices = unit.choices.includes(value) ? unit.choices : [value, ...unit.choices];
  return { id: `${id}.unit`, value, choices };
};

/** The unit that stands beside a number: the chosen one, or the only one. */
export const unitBeside = ({ field }: Asked<number>): string => {
  const unit = 'unit' in field ? field.unit : undefined;
  return unit === undefined || typeof unit === 'string' ? (unit ?? '') : unit.value;
};

/**
 * A number asked of the user. What is wrong is said as soon as it is typed; what is missing, once the section's main
 * action was tried.
 */
export const askNumber = (state: PaneState, question: NumberQuestion): Asked<number> => {
  const { section, id, label, help, known, figures } = question;
  const text = textOf(state, id, known === undefined ? '' : fieldNumber(known, figures));
  const fault = numberFault(question, text);
  const shown = text.trim() === '' && !state.tried.includes(section) ? undefined : fault;
  const unit = unitOf(state, question);
  // What was not typed over keeps its full precision.
  const value = state.typed[id] === undefined && known !== undefined ? known : readNumber(text);
  return {
    field: {
      kind: 'number',
      id,
      label,
      value: text,
      ...(unit === undefined ? {} : { unit }),
      ...(help === undefined ? {} : { help }),
      ...(shown === undefined ? {} : { error: shown }),
    },
    ...(fault === undefined ? {} : { fault }),
    ...(value === undefined || fault !== undefined ? {} : { value }),
  };
};

export interface TextQuestion extends Question {
  readonly known?: string;
  readonly kind?: 'text' | 'date' | 'time';
  /** The value of a text, or undefined where it cannot be one; blank is never asked. */
  readonly read?: (text: string) => string | undefined;
  /** What is allowed, as the end of "use …". */
  readonly allowed?: string;
  readonly required?: boolean;
}

/** A text, a day or a time of day asked of the user. */
export const askText = (state: PaneState, question: TextQuestion): Asked<string> => {
  const {
    section,
    id,
    label,
    help,
    known = '',
    kind = 'text',
    read = (text) => text,
    required = false,
  } = question;
  const { allowed = 'a few words' } = question;
  const text = textOf(state, id, known);
  const blank = text.trim() === '';
  const value = blank ? undefined : read(text.trim());
  const given = blank ? 'nothing' : `“${text.trim()}”`;
  const fault =
    (blank && required) || (!blank && value === undefined)
      ? `${label}: ${given} was given; use ${allowed}.`
      : undefined;
  const shown = blank && !state.tried.includes(section) ? undefined : fault;
  return {
    field: {
      kind,
      id,
      label,
      value: text,
      ...(help === undefined ? {} : { help }),
      ...(shown === undefined ? {} : { error: shown }),
    },
    ...(fault === undefined ? {} : { fault }),
    ...(value === undefined ? {} : { value }),
  };
};

export interface ChoiceQuestion extends Question {
  readonly known: string;
  readonly choices: readonly (string | { readonly value: string; readonly label: string })[];
}

/** One of a few. A value that is none of them is kept and shown, so that opening the pane changes nothing. */
export const askChoice = (
  state: PaneState,
  { id, label, help, known, choices }: ChoiceQuestion,
): Asked<string> => {
  const value = textOf(state, id, known);
  const offered = choices.map((choice) =>
    typeof choice === 'string' ? { value: choice, label: choice } : choice,
  );
  const all = offered.some((choice) => choice.value === value)
    ? offered
    : [{ value, label: value === '' ? 'Choose' : value }, ...offered];
  return {
    field: { kind: 'choice', id, label, value, choices: all, ...(help === undefined ? {} : { help }) },
    value,
  };
};

/** Yes or no. */
export const askToggle = (
  state: PaneState,
  { id, label, help, known }: Question & { readonly known: boolean },
): Asked<boolean> => {
  const value = textOf(state, id, known ? 'yes' : '');
  return {
    field: { kind: 'toggle', id, label, value, ...(help === undefined ? {} : { help }) },
    value: value === 'yes',
  };
};

/** The first fault among answers. */
export const firstFault = (answers: readonly Asked<unknown>[]): string | undefined =>
  answers.find(({ fault }) => fault !== undefined)?.fault;
