import { call, NAMESPACE, type FeedCall, type RawArgument, type RawScalar } from '../../../functions';
import { areaOfReference } from '../../workbook/references';
import { areaNamed } from '../../workbook/snapshot';
import type { Area } from '../../workbook/change';
import type { CellState, Outline, Workbook } from '../../workbook/port';
import { notFollowed, NotUnderstood, type Part } from './formulaParts';

/** A function of Calc's own on plain values; undefined where it takes none, as one that gives back cells. */
export type Compute = (name: string, args: readonly RawArgument[]) => Promise<RawArgument | undefined>;

const isRows = (value: RawArgument): value is readonly (readonly RawScalar[])[] => Array.isArray(value);
const isError = (value: RawArgument): value is { readonly error: string } =>
  typeof value === 'object' && value !== null && 'error' in value;

const stateValue = ({ value, error }: CellState): RawScalar =>
  error === undefined ? (value ?? '') : { error };

/** Functions that compute only what they choose. */
const CHOOSING = new Set(['IF', 'IFERROR', 'IFNA']);

const ARITHMETIC: Readonly<Record<string, (a: number, b: number) => number>> = {
  '+': (a, b) => a + b,
  '-': (a, b) => a - b,
  '*': (a, b) => a * b,
  '/': (a, b) => a / b,
  '^': (a, b) => a ** b,
};

const COMPARED: Readonly<Record<string, (order: number) => boolean>> = {
  '=': (order) => order === 0,
  '<>': (order) => order !== 0,
  '<': (order) => order < 0,
  '>': (order) => order > 0,
  '<=': (order) => order <= 0,
  '>=': (order) => order >= 0,
};

const asNumber = (value: RawScalar): number => {
  if (typeof value === 'number') return value;
  if (typeof value === 'boolean') return value ? 1 : 0;
  if (value === '' || value === null || value === undefined) return 0;
  throw notFollowed(String(value));
};

const asText = (value: RawScalar): string => (value === null || value === undefined ? '' : String(value));

const orderOf = (left: RawScalar, right: RawScalar): number => {
  if (typeof left === 'string' && typeof right === 'string')
    return left.localeCompare(right, undefined, { sensitivity: 'base' });
  // A blank cell equals empty text and 0 alike; text comes after every number.
  const texts = [left, right].map((value) => typeof value === 'string' && value !== '');
  return texts[0] === texts[1] ? asNumber(left) - asNumber(right) : texts[0] ? 1 : -1;
};

const joined = (operator: string, left: RawScalar, right: RawScalar): RawScalar => {
  const error = [left, right].find(isError);
  if (error) return error;
  const arithmetic = ARITHMETIC[operator];
  if (arithmetic) {
    const result = arithmetic(asNumber(left), asNumber(right));
    return Number.isFinite(result) ? result : { error: operator === '/' ? '#DIV/0!' : '#NUM!' };
  }
  if (operator === '&') return asText(left) + asText(right);
  return COMPARED[operator]!(orderOf(left, right));
};

const RANGE =
  'The working is not told, because the formula computes with a whole range at once. Put that part into cells of its own to see the rest.';

const single = (value: RawArgument): RawScalar => {
  if (!isRows(value)) return value;
  if (value.length === 1 && value[0]!.length === 1) return value[0]![0];
  throw new NotUnderstood(RANGE);
};

/**
 * The FEED functions that a formula computes, in its order, with the values of their arguments now. Nothing is
 * written to find them out.
 *
 * @param sheet where the formula stands: a reference without a sheet is to this one
 * @throws NotUnderstood where an argument cannot be computed here
 */
export const feedCalls = async (
  parts: Part,
  sheet: string,
  workbook: Workbook,
  compute: Compute,
): Promise<readonly FeedCall[]> => {
  const calls: FeedCall[] = [];
  let outline: Outline | undefined;

  const valueOf = async (area: Area): Promise<RawArgument> => {
    const { blocks } = await workbook.read([area]);
    const rows = blocks[0]!.cells.map((line) => line.map(stateValue));
    return rows.length === 1 && rows[0]!.length === 1 ? rows[0]![0] : rows;
  };

  const firstTrue = async (pairs: readonly Part[]): Promise<RawArgument> => {
    for (let at = 0; at + 1 < pairs.length; at += 2) {
      const condition = single(await worth(pairs[at]!));
      if (isError(condition)) return condition;
      if (asNumber(condition) !== 0) return worth(pairs[at + 1]!);
    }
    return { error: '#N/A' };
  };

  const chosen = async (name: string, args: readonly Part[]): Promise<RawArgument> => {
    const first = await worth(args[0]!);
    const other = (index: number, without: RawScalar): Promise<RawArgument> | RawScalar =>
      args[index] === undefined ? without : worth(args[index]);
    if (name !== 'IF') {
      const caught = isError(first) && (name === 'IFERROR' || first.error === '#N/A');
      return caught ? other(1, '') : first;
    }
    const condition = single(first);
    if (isError(condition)) return condition;
    return asNumber(condition) === 0 ? other(2, false) : other(1, true);
  };

  const called = async (name: string, given: readonly Part[]): Promise<RawArgument> => {
    if (name === 'IFS') return firstTrue(given);
    if (CHOOSING.has(name)) return chosen(name, given);
    const args: RawArgument[] = [];
    for (const part of given) args.push(await worth(part));
    if (!name.startsWith(`${NAMESPACE}.`)) {
      const result = args.find(isError) ?? (await compute(name, args));
      if (result === undefined) throw notFollowed(`${name}(…)`);
      return result;
    }
    const own = name.slice(NAMESPACE.length + 1);
    const outcome = call(own, args);
    calls.push({ name: own, args, outcome });
    return 'value' in outcome ? outcome.value : { error: outcome.error };
  };

  const named = async (name: string): Promise<RawArgument> => {
    outline ??= await workbook.outline();
    const area = areaNamed(outline, name);
    if (area === undefined) throw notFollowed(name);
    return valueOf(area);
  };

  const worth = async (part: Part): Promise<RawArgument> => {
    switch (part.kind) {
      case 'value':
        return part.value;
      case 'array': {
        const rows: RawScalar[][] = [];
        for (const line of part.rows) {
          const row: RawScalar[] = [];
          for (const cell of line) row.push(single(await worth(cell)));
          rows.push(row);
        }
        return rows;
      }
      case 'cells': {
        const area = areaOfReference(
          part.reference.includes('!')
            ? part.reference
            : `'${sheet.replaceAll("'", "''")}'!${part.reference}`,
        );
        if (area === undefined) throw notFollowed(part.reference);
        return valueOf(area);
      }
      case 'name':
        return named(part.name);
      case 'call':
        return called(part.name, part.args);
      case 'negative':
        return joined('-', 0, single(await worth(part.of)));
      case 'percent':
        return joined('/', single(await worth(part.of)), 100);
      case 'joined':
        return joined(part.operator, single(await worth(part.left)), single(await worth(part.right)));
    }
  };

  await worth(parts);
  return calls;
};
