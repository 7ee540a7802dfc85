import { call, type RawArgument, type RawScalar, type ResultValue } from '../../../functions';
import { codeOfError, errorOfCode } from './errorCodes';
import { rowsOf } from './longRange';
import type { FunctionAnswer, FunctionCall, LongRange, WireArgument, WireScalar } from './wire/messages';

const isLong = (arg: WireArgument): arg is LongRange =>
  typeof arg === 'object' && arg !== null && 'height' in arg;

const isCells = (arg: WireArgument): arg is readonly (readonly WireScalar[])[] => Array.isArray(arg);

const scalar = (cell: WireScalar): RawScalar =>
  typeof cell === 'object' && cell !== null ? { error: errorOfCode(cell.code) } : cell;

/** Rows with as many blank ones at their end as it takes. */
const filledUp = (rows: readonly (readonly RawScalar[])[], length: number) => {
  const blank: readonly RawScalar[] = (rows[0] ?? ['']).map(() => '');
  return rows.length === length ? rows : Array.from({ length }, (_, row) => rows[row] ?? blank);
};

/**
 * The arguments as the catalogue expects them. Blank rows at the end of a range say nothing to any function, so long
 * ranges of one height get back no more of them than the fullest needs; two rows stay two, so that a range is not
 * taken for one value. Ranges of unlike heights get all back, for the function to refuse.
 */
const whole = (args: readonly WireArgument[]): RawArgument[] => {
  const long = args.filter(isLong);
  const read = new Map(long.map((range) => [range, rowsOf(range)]));
  const used = Math.max(2, ...[...read.values()].map((rows) => rows.length));
  const alike = new Set(long.map(({ height }) => height)).size < 2;
  return args.map((arg) => {
    if (isLong(arg)) return filledUp(read.get(arg)!, alike ? used : arg.height);
    return isCells(arg) ? arg.map((row) => row.map(scalar)) : scalar(arg);
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
