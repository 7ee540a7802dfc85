import type { HostBook } from './hostBook';

type Awaitable<T> = T | Promise<T>;
// Targets differ from class to class; the table of behaviours keeps each to its own kind.
// eslint-disable-next-line @typescript-eslint/no-explicit-any
export type Target = any;

/** What a method makes of its arguments. */
export type Run = (target: Target, args: readonly unknown[], book: HostBook) => Awaitable<unknown>;

/** What the fake knows of a class of the model. A member that is real but not here is refused as not faked. */
export interface Behaviour {
  /** Properties that can be loaded. */
  readonly values?: Readonly<Record<string, (target: Target, book: HostBook) => Awaitable<unknown>>>;
  /** Properties that can be set; they throw where the value has the wrong shape. */
  readonly sets?: Readonly<
    Record<string, (target: Target, value: unknown, book: HostBook) => Awaitable<void>>
  >;
  /** Objects that hang on this one. */
  readonly objects?: Readonly<Record<string, (target: Target, book: HostBook) => Awaitable<Target>>>;
  /** Methods; those that change the workbook are named in `changes`. */
  readonly calls?: Readonly<Record<string, Run>>;
  readonly changes?: readonly string[];
  /** Methods that the program cannot undo. */
  readonly noUndo?: readonly string[];
  /** Members of a collection, with their class. */
  readonly items?: {
    readonly of: string;
    readonly all: (target: Target, book: HostBook) => Awaitable<readonly Target[]>;
  };
}

/** What an OrNullObject method gives where there is nothing. */
export const NOTHING = Symbol('nothing');
