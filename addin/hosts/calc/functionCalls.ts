import { call, type RawArgument, type RawScalar, type ResultValue } from '../../../functions';
import { codeOfError } from './errorCodes';
import type { FunctionAnswer, FunctionCall, LongRange, WireArgument } from './wire';

const isLong = (arg: WireArgument): arg is LongRange =>
  typeof arg === 'object' && arg !== null && 'height' in arg;

const rowsOf = (range: LongRange): readonly (readonly RawScalar[])[] => {
  if ('rows' in range) return range.rows;
  const bytes = Buffer.from(range.numbers, 'base64');
  const { width } = range;
  return Array.from({ length: bytes.length / 8 / width }, (_r, row) =>
    Array.from({ length: width }, (_c, column) => bytes.readDoubleLE(8 * (row * width + column))),
  );
};

/**
 * The arguments as the catalogue expects them. Blank rows at the end of a range say nothing to any function, so long
 * ranges of one height get back no more of them than the fullest needs; two rows stay two, so that a range is not
 * taken for one value. Ranges of unlike heights get all back, for the function to refuse.
 */
const whole = (args: readonly WireArgument[]): RawArgument[] => {
  const heights = new Set(args.filter(isLong).map(({ height }) => height));
  const read = args.map((arg) => (isLong(arg) ? rowsOf(arg) : arg));
  const used = Math.max(
    2,
    ...args.map((arg, index) => (isLong(arg) ? (read[index] as readonly unknown[]).length : 0)),
  );
  return args.map((arg, index) => {
    if (!isLong(arg)) return arg;
    const rows = read[index] as readonly (readonly RawScalar[])[];
    const length = heights.size < 2 ? used : arg.height;
    if (rows.length === length) return rows;
    const blank: readonly RawScalar[] = (rows[0] ?? ['']).map(() => '');
    return Array.from({ length }, (_, row) => rows[row] ?? blank);
  });
};

const isRows = (value: ResultValue): value is readonly (readonly (number | string)[])[] =>
  typeof value === 'object';

/**
 * Calls a worksheet function for a cell.
 *
 * @example answerCall({ id: 1, call: 'SECONDS', args: [0.7, 'gal', 2.8, 'gal/min'] }) // { id: 1, value: 15 }
 */
export const answerCall = ({ id, call: name, args }: FunctionCall): FunctionAnswer => {
  const outcome = call(name, whole(args));
  if ('error' in outcome) return { id, code: codeOfError(outcome.error) };
  return isRows(outcome.value) ? { id, rows: outcome.value } : { id, value: outcome.value };
};
