/** As much of the program's runtime of functions as an add-in is given, after its types. */

/** The errors that a function may answer. */
export const ErrorCode = {
  invalidValue: '#VALUE!',
  notAvailable: '#N/A',
  divisionByZero: '#DIV/0!',
  invalidNumber: '#NUM!',
  nullReference: '#NULL!',
} as const;

const WITH_SENTENCE: readonly string[] = [ErrorCode.invalidValue, ErrorCode.notAvailable];

/** An error as a function throws it; the program shows a sentence with two of them only. */
export class CellError extends Error {
  constructor(
    readonly code: string,
    message?: string,
  ) {
    super(message);
    if (message !== undefined && !WITH_SENTENCE.includes(code)) throw new Error(`${code} takes no sentence.`);
  }
}
