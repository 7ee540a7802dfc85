import type { ErrorCell, RawArgument, RawScalar, Refused } from '../../../functions';

/** Errors that a cell may be given as an answer, by what it shows. The program shows a sentence with the first two only. */
const ANSWERS = {
  '#VALUE!': 'invalidValue',
  '#N/A': 'notAvailable',
  '#DIV/0!': 'divisionByZero',
  '#NUM!': 'invalidNumber',
  '#NULL!': 'nullReference',
} as const satisfies Record<string, keyof typeof CustomFunctions.ErrorCode>;

const isAnswer = (error: string): error is keyof typeof ANSWERS => Object.hasOwn(ANSWERS, error);

/**
 * A refusal as the program takes it. Its sentence is what the error's card says. Errors that came in and that no
 * function may answer come out as a wrong value that says so.
 */
export const asCellError = ({ error, sentence }: Refused): CustomFunctions.Error => {
  const codes = CustomFunctions.ErrorCode;
  if (isAnswer(error)) return new CustomFunctions.Error(codes[ANSWERS[error]], sentence);
  return new CustomFunctions.Error(codes.invalidValue, sentence ?? `An argument is the error ${error}.`);
};

/** What an error value among the arguments may look like: the error of a function, or the cell's value with its type. */
const errorOf = (value: object): string | undefined => {
  const { code, basicValue } = value as { readonly code?: unknown; readonly basicValue?: unknown };
  return [code, basicValue].find((text): text is string => typeof text === 'string' && text.startsWith('#'));
};

const scalar = (value: unknown): RawScalar => {
  if (value === null || value === undefined) return null;
  if (typeof value === 'number' || typeof value === 'string' || typeof value === 'boolean') return value;
  const cell: ErrorCell = { error: errorOf(value as object) ?? '#VALUE!' };
  return cell;
};

/** An argument as the catalogue expects it. Null is one left out, or a blank cell of a range. */
export const rawArgument = (value: unknown): RawArgument =>
  Array.isArray(value)
    ? value.map((row: unknown) => (Array.isArray(row) ? row.map(scalar) : [scalar(row)]))
    : scalar(value);
