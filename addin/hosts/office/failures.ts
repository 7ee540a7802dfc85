import { WorkbookError } from '../../workbook/port';

const CELL_EDITED = 'A cell is being edited. Finish it with Enter, or leave it with Esc, then try again.';
const TOO_MUCH = 'That is more than the program takes at once.';

/** What the program's refusals mean to the user; https://learn.microsoft.com/office/dev/add-ins/testing/application-specific-api-error-handling */
const SENTENCES: Readonly<Record<string, string>> = {
  InvalidOperationInCellEditMode: CELL_EDITED,
  AccessDenied:
    'The program did not allow it: the workbook or a sheet is protected, or open for reading only.',
  FilteredRangeConflict: 'A filter hides some of the cells. Clear the filter, then try again.',
  MergedRangeConflict: 'Merged cells are in the way. Take the merge back, then try again.',
  PivotTableRangeConflict: 'A pivot table is in the way. Move it, then try again.',
  ItemNotFound: 'A sheet or an object that this needs is no longer there. Try again.',
  ItemAlreadyExists: 'There is something of that name in the workbook already.',
  InactiveWorkbook: 'Another workbook is in front. Go back to this one, then try again.',
  UnsupportedSheet: 'A chart sheet or a macro sheet is in the way.',
  RequestPayloadSizeLimitExceeded: TOO_MUCH,
  ResponsePayloadSizeLimitExceeded: TOO_MUCH,
  MemoryLimitReached: TOO_MUCH,
  RangeExceedsLimit: TOO_MUCH,
  OperationCellsExceedLimit: TOO_MUCH,
  ActivityLimitReached: 'The program is too busy. Wait a moment, then try again.',
  ServiceNotAvailable: 'The program cannot be reached. Check the connection, then try again.',
  RequestAborted: 'The program stopped the work. Try again.',
  Unauthenticated: 'The program no longer knows who you are. Sign in again, then try again.',
};

/** The code of an error of the program, or undefined for an error of another kind. */
export const codeOf = (error: unknown): string | undefined => {
  const code = (error as { code?: unknown } | undefined)?.code;
  return typeof code === 'string' ? code : undefined;
};

/** The plain sentence of an error of the program, or undefined where there is none. */
export const sentenceOf = (error: unknown): string | undefined => {
  const code = codeOf(error);
  return code !== undefined && Object.hasOwn(SENTENCES, code) ? SENTENCES[code] : undefined;
};

/**
 * What is thrown for a failure: what did not happen, why where it is known, and how the workbook stands now.
 *
 * @param what "“Plan the round” could not be written"
 * @param now  "the workbook stays as it was"
 */
export const failure = (error: unknown, what: string, now?: string): WorkbookError => {
  if (error instanceof WorkbookError) return error;
  const sentence = sentenceOf(error);
  const first = now === undefined ? `${what}.` : `${what}, and ${now}.`;
  return new WorkbookError(sentence === undefined ? first : `${sentence} ${first}`, { cause: error });
};

/** True where the answer or the request was larger than the program passes at once. */
export const isTooLarge = (error: unknown): boolean => sentenceOf(error) === TOO_MUCH;
