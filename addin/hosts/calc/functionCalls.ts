import { call, type RawArgument, type RawScalar, type ResultValue } from '../../../functions';
import { codeOfError } from './errorCodes';
import type { FunctionAnswer, FunctionCall, WireArgument } from './wire';

type Long = Extract<WireArgument, { readonly height: number }>;

const isLong = (arg: WireArgument): arg is Long => typeof arg === 'object' && arg !== null && 'height' in arg;

/**
 * The arguments as the catalogue expects them. Blank rows at the end of a range say nothing to any function, so long
 * ranges of one height get back no more of them than the fullest needs; two rows stay two, so that a range is not
 * taken for one value. Ranges of unlike heights get all back, for the function to refuse.
 */
const whole = (args: readonly WireArgument[]): RawArgument[] => {
  const long = args.filter(isLong);
  const alike = new Set(long.map(({ height }) => height)).size < 2;
  const used = Math.max(2, ...long.map(({ rows }) => rows.length));
  return args.map((arg) => {
    if (!isLong(arg)) return arg;
    const blank: readonly RawScalar[] = (arg.rows[0] ?? ['']).map(() => '');
    return Array.from({ length: alike ? used : arg.height }, (_, row) => arg.rows[row] ?? blank);
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
