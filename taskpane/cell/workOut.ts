import { call, NAMESPACE, type Outcome } from '../../functions';
import type { Part } from '../../addin/workbook/formula/tree';
import type { CellsHeld, Value } from './cellValues';
import { asNumber, computed, isError, isRows, joined, single } from './spreadsheetFunctions';

/** A FEED function as a formula calls it now. */
export interface FeedCall {
  readonly name: string;
  readonly args: readonly Worth[];
  /** Undefined where an argument is not worked out here. */
  readonly outcome: Outcome | undefined;
}

/** What a part of a formula comes to, and what goes into it. */
export interface Worth {
  /** Undefined where it is not worked out here. */
  readonly value: Value | undefined;
  /** True where the part is cells and nothing else. */
  readonly plain: boolean;
  /** Cells that go in otherwise than through a FEED function, in the formula's order. */
  readonly cells: readonly CellsHeld[];
  /** The FEED functions that are called, the inner ones first. */
  readonly calls: readonly FeedCall[];
}

const PREFIX = `${NAMESPACE}.`;

const from = (value: Value | undefined, ...parts: readonly Pick<Worth, 'cells' | 'calls'>[]): Worth => ({
  value,
  plain: false,
  cells: [...new Set(parts.flatMap(({ cells }) => cells))],
  calls: parts.flatMap(({ calls }) => calls),
});

/** The same without its functions: nobody knows whether they are called. */
const perhaps = ({ cells, calls }: Worth): Pick<Worth, 'cells' | 'calls'> => ({
  cells: [...cells, ...calls.flatMap(({ args }) => args.flatMap(({ cells: read }) => read))],
  calls: [],
});

/** True or false as a condition; undefined where that is not sure. */
const isMet = ({ value }: Worth): boolean | undefined => {
  const one = value === undefined ? undefined : single(value);
  const number = one === undefined ? undefined : asNumber(one);
  return number === undefined ? undefined : number !== 0;
};

/**
 * Works a formula out as far as that is sure: arithmetic, a few functions of every spreadsheet, ours. A branch that is
 * not taken goes in with nothing.
 *
 * @param held the cells that the formula reads, by their spelling in it
 */
export const workOut = (formula: Part, held: ReadonlyMap<string, CellsHeld>): Worth => {
  const two = (operator: string, left: Worth, right: Worth): Worth => {
    const [a, b] = [left, right].map(({ value }) => (value === undefined ? undefined : single(value)));
    return from(a === undefined || b === undefined ? undefined : joined(operator, a, b), left, right);
  };

  /** IFS: conditions and what they stand before, in turn. */
  const chosen = (condition: Worth | undefined, then: Part | undefined, rest: () => Worth): Worth => {
    if (condition === undefined) return rest();
    if (condition.value !== undefined && isError(condition.value)) return condition;
    const met = isMet(condition);
    if (met === undefined)
      return from(undefined, condition, ...[then ? worth(then) : rest(), rest()].map(perhaps));
    const branch = met && then !== undefined ? worth(then) : met ? from(true) : rest();
    return from(branch.value, condition, branch);
  };
  const firstMet = (pairs: readonly Part[]): Worth =>
    pairs.length < 2
      ? from({ error: '#N/A' })
      : chosen(worth(pairs[0]!), pairs[1], () => firstMet(pairs.slice(2)));

  const unlessError = (name: string, first: Worth, other: Part | undefined): Worth => {
    const instead = (): Worth => (other ? worth(other) : from(''));
    if (first.value === undefined) return from(undefined, first, perhaps(instead()));
    const caught = isError(first.value) && (name === 'IFERROR' || first.value.error === '#N/A');
    if (!caught) return first;
    const branch = instead();
    return from(branch.value, first, branch);
  };

  const feedCall = (name: string, args: readonly Worth[]): Worth => {
    const values = args.flatMap(({ value }) => (value === undefined ? [] : [value]));
    const outcome = values.length === args.length ? call(name, values) : undefined;
    const value = outcome && ('value' in outcome ? outcome.value : { error: outcome.error });
    return from(value, {
      cells: [],
      calls: [...args.flatMap(({ calls }) => calls), { name, args, outcome }],
    });
  };

  const called = (name: string, given: readonly Part[]): Worth => {
    const [first, second, third] = given;
    if (name === 'IF' && first)
      return chosen(worth(first), second, () => (third ? worth(third) : from(false)));
    if (name === 'IFS') return firstMet(given);
    if ((name === 'IFERROR' || name === 'IFNA') && first) return unlessError(name, worth(first), second);
    const args = given.map(worth);
    if (name.startsWith(PREFIX)) return feedCall(name.slice(PREFIX.length), args);
    const values = args.flatMap(({ value }) => (value === undefined ? [] : [value]));
    return from(values.length === args.length ? computed(name, values) : undefined, ...args);
  };

  const worth = (part: Part): Worth => {
    switch (part.kind) {
      case 'value':
        return from(part.value);
      case 'array': {
        const rows = part.rows.map((line) => line.map((cell) => worth(cell).value));
        const sure = rows.every((line) => line.every((cell) => cell !== undefined && !isRows(cell)));
        return from(sure ? (rows as Value) : undefined);
      }
      case 'read': {
        const cells = held.get(part.text);
        return { value: cells?.value, plain: cells !== undefined, cells: cells ? [cells] : [], calls: [] };
      }
      case 'call':
        return called(part.name, part.args);
      case 'negative':
        return two('-', from(0), worth(part.of));
      case 'percent':
        return two('/', worth(part.of), from(100));
      case 'joined':
        return two(part.operator, worth(part.left), worth(part.right));
    }
  };

  return worth(formula);
};
