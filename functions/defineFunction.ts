import { firstError, isLeftOut, single } from './arguments';
import type {
  ExampleEntry,
  FunctionEntry,
  Outcome,
  ParameterEntry,
  RawArgument,
  Refused,
  ResultValue,
  Step,
  Working,
} from './definition';
import type { Parameter } from './parameters';
import { isRefused } from './parameters';
import { couldNotCompute, lostInArithmetic, outOfReach, told, tooManyArguments } from './sentences';

type Parameters = Readonly<Record<string, Parameter<unknown>>>;

type Values<P extends Parameters> = {
  readonly [Name in keyof P]: P[Name] extends Parameter<infer T> ? T : never;
};

interface Definition<P extends Parameters, R extends ResultValue> extends Pick<
  FunctionEntry,
  'name' | 'summary' | 'result' | 'source'
> {
  /** In the order of the call. */
  readonly parameters: P;
  readonly errors?: readonly string[];
  readonly examples: readonly ExampleEntry[];
  /** Where 0 may come of required numbers that are none of them 0; nowhere, if left out. */
  readonly mayBeZero?: (values: Values<P>) => boolean;
  readonly compute: (values: Values<P>) => R | Refused;
  /** The steps that lead to `value`; the last one ends with it. */
  readonly working: (values: Values<P>, value: R) => readonly (Step | string)[];
}

const entryOf = (name: string, parameter: Parameter<unknown>): ParameterEntry => {
  const { description, type, optional, range, allowed, units, otherwise } = parameter;
  const entry = { name, description, type, optional, range, allowed };
  return { ...entry, ...(units && { units }), ...(otherwise !== undefined && { otherwise }) };
};

/** A result that a cell can hold: every number finite, no negative zero. */
const asResult = (value: ResultValue): ResultValue | undefined => {
  if (typeof value === 'string') return value;
  if (typeof value === 'number') return Number.isFinite(value) ? value + 0 : undefined;
  return value.every((row) => row.every((cell) => typeof cell === 'string' || Number.isFinite(cell)))
    ? value
    : undefined;
};

const largestOf = (raw: RawArgument): number => {
  const cells: readonly unknown[] = Array.isArray(raw) ? raw.flat() : [raw];
  return cells.reduce<number>(
    (most, cell) => (typeof cell === 'number' ? Math.max(most, Math.abs(cell)) : most),
    0,
  );
};

const given = (args: readonly RawArgument[]): number => {
  let count = args.length;
  while (count > 0 && (args[count - 1] === null || args[count - 1] === undefined)) count -= 1;
  return count;
};

/** Makes a catalogue entry: reads and checks the arguments once, then computes or tells from the same values. */
export const defineFunction = <P extends Parameters, R extends ResultValue>(
  definition: Definition<P, R>,
): FunctionEntry => {
  const { name, summary, result, source, examples, errors = [], compute, working } = definition;
  const { mayBeZero = () => false } = definition;
  const declared = Object.entries<Parameter<unknown>>(definition.parameters);
  const parameters = declared.map(([key, parameter]) => entryOf(key, parameter));

  const readAll = (args: readonly RawArgument[]): Values<P> | Refused => {
    const error = firstError(args);
    if (error) return { error: error.error };
    if (args.length > declared.length && given(args) > declared.length) {
      return tooManyArguments(name, declared.length, given(args));
    }
    const values: Record<string, unknown> = {};
    for (let index = 0; index < declared.length; index++) {
      const [key, parameter] = declared[index]!;
      const value = parameter.read(args[index], key);
      if (isRefused(value)) return value;
      values[key] = value;
    }
    return values as Values<P>;
  };

  /** The argument to blame when ordinary arithmetic no longer holds the result. */
  const beyond = (args: readonly RawArgument[]): Refused => {
    const sizes = args.slice(0, declared.length).map(largestOf);
    const index = sizes.indexOf(Math.max(...sizes));
    return outOfReach(declared[index]![0], args[index]);
  };

  /** The argument to blame for a 0 that none of the required numbers is. */
  const lost = (values: Values<P>): Refused | undefined => {
    const numbers = declared.flatMap(([key, { optional }]) => {
      const value: unknown = values[key];
      return typeof value === 'number' && !optional ? [{ key, value }] : [];
    });
    const [first, ...others] = numbers;
    if (!first || numbers.some(({ value }) => value === 0) || mayBeZero(values)) return undefined;
    const least = others.reduce((a, b) => (Math.abs(b.value) < Math.abs(a.value) ? b : a), first);
    return lostInArithmetic(least.key, told(least.value));
  };

  const valueOf = (values: Values<P>, args: readonly RawArgument[]): R | Refused => {
    const computed = compute(values);
    if (isRefused(computed)) return computed;
    const nothing = computed === 0 ? lost(values) : undefined;
    if (nothing) return nothing;
    return (asResult(computed) as R | undefined) ?? beyond(args);
  };

  const evaluate = (args: readonly RawArgument[]): Outcome => {
    try {
      const values = readAll(args);
      if (isRefused(values)) return values;
      const value = valueOf(values, args);
      return isRefused(value) ? value : { value };
    } catch (error) {
      // The core throws where its own invariants break; a throw would stop a host's formula engine for good.
      return couldNotCompute(name, error instanceof Error ? error.message : String(error));
    }
  };

  const explain = (args: readonly RawArgument[]): Working | Refused => {
    try {
      const values = readAll(args);
      if (isRefused(values)) return values;
      const value = valueOf(values, args);
      if (isRefused(value)) return value;
      const steps = working(values, value).map((step) => (typeof step === 'string' ? { text: step } : step));
      const said = parameters.map((parameter, index) => {
        const cell = single(args[index]);
        const left = parameter.optional && isLeftOut(cell);
        return { name: parameter.name, given: left ? `left out: ${parameter.otherwise}` : told(cell) };
      });
      return { name, summary, arguments: said, steps, value, source };
    } catch (error) {
      return couldNotCompute(name, error instanceof Error ? error.message : String(error));
    }
  };

  return { name, summary, parameters, result, errors, examples, source, evaluate, explain };
};
