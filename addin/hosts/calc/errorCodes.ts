/** Numbers that Calc gives to the errors a cell can show. */
const CODES: ReadonlyMap<string, number> = new Map([
  ['#NUM!', 503],
  ['#VALUE!', 519],
  ['#NULL!', 521],
  ['#REF!', 524],
  ['#NAME?', 525],
  ['#DIV/0!', 532],
  ['#N/A', 32_767],
]);

const VALUE = 519;

/** The number of an error; one that Calc does not know is a wrong value. */
export const codeOfError = (error: string): number => CODES.get(error) ?? VALUE;

/** The error as other spreadsheets show it; Calc's own kinds, such as Err:504, are wrong values there. */
export const errorOfCode = (code: number): string =>
  [...CODES].find(([, known]) => known === code)?.[0] ?? '#VALUE!';
