import type { ApiMembers } from './apiMembers';
import { NOTHING, type Behaviour, type Target } from './behaviour';
import type { HostBook } from './hostBook';
import { HostError } from './hostError';

/** What a batch does at the next sync, with about its size in the request. */
interface Action {
  readonly what: string;
  readonly bytes: number;
  readonly changes: boolean;
  readonly noUndo: boolean;
  readonly run: () => Promise<void>;
}

/** A batch: what is queued, and what came back. */
export interface Batch {
  readonly actions: Action[];
  /** Bytes of everything loaded since the last sync. */
  answered: number;
  over: boolean;
}

/** What all batches of a program share. */
export interface Machine {
  readonly members: ApiMembers;
  readonly behaviours: Readonly<Record<string, Behaviour>>;
  readonly book: HostBook;
  /** Called for each member that is used, with the set that brings it; throws where the program lacks it. */
  readonly use: (member: string, set: string | undefined) => void;
  /** Registers a handler of an event; returns what takes it off. */
  readonly listen: (event: string, handler: (args: unknown) => void) => () => void;
}

const OVERHEAD = 150;
/** Members that every object has, besides those of its class. */
const ANYWHERE = new Set(['load', 'isNullObject', 'context']);

const bytesOf = (value: unknown): number => new TextEncoder().encode(JSON.stringify(value) ?? '').length;

/** Paths of a load: "values,format/columnWidth" or a list of them. */
const pathsOf = (option: unknown): string[][] => {
  const text = Array.isArray(option) ? option : typeof option === 'string' ? option.split(',') : [];
  const paths = text.map((path) => String(path).trim().split('/'));
  if (paths.length === 0 || paths.some((path) => path.some((part) => part === '')))
    throw new HostError('InvalidArgument', 'load needs the names of properties');
  return paths;
};

/** Makes the objects of the model for one batch. They are strict where the program's own are lenient. */
export const clientObjects = (machine: Machine, batch: Batch, context: object) => {
  const targets = new WeakMap<object, () => Promise<Target>>();

  const queue = (action: Action): void => {
    if (batch.over) throw new HostError('InvalidObjectPath', `${action.what} after its batch was over`);
    batch.actions.push(action);
  };

  /** An argument as the book sees it: an object of the model is what it stands for. */
  const argument = async (value: unknown): Promise<unknown> => {
    const target = typeof value === 'object' && value !== null ? targets.get(value) : undefined;
    return target ? target() : value;
  };
  const plain = (value: unknown): unknown =>
    typeof value === 'object' && value !== null && targets.has(value) ? 'object' : value;

  /** @param find what the object stands for; asked once, when it is first needed */
  const make = (className: string, find: () => Promise<Target>, mayBeNothing = false): object => {
    const behaviour = machine.behaviours[className];
    const declared = machine.members[className];
    if (!behaviour || !declared) throw new Error(`The fake has no ${className}.`);
    const loaded = new Map<string, unknown>();
    const hanging = new Map<string, object>();
    let found: Target;
    let isFound = false;
    const target = async (): Promise<Target> => {
      if (!isFound) {
        found = await find();
        isFound = true;
      }
      return found;
    };
    const something = async (what: string): Promise<Target> => {
      const there = await target();
      if (there === NOTHING) throw new HostError('InvalidObjectPath', `${what} of nothing`);
      return there;
    };

    const member = (name: string, write = false) => {
      const known = Object.hasOwn(declared, name) ? declared[name] : undefined;
      if (!known) throw new HostError('InvalidArgument', `${className} has no ${name}`);
      machine.use(`${className}.${name}`, write ? (known.setToWrite ?? known.set) : known.set);
      return known;
    };

    const hang = (name: string, gives: string): object => {
      const known = hanging.get(name);
      if (known) return known;
      const reach = behaviour.objects?.[name];
      if (!reach) throw new Error(`The fake does not know ${className}.${name}.`);
      const object = make(gives, async () => reach(await something(`${className}.${name}`), machine.book));
      hanging.set(name, object);
      return object;
    };

    const loadOne = async (path: readonly string[]): Promise<void> => {
      const [name = '', ...rest] = path;
      const reached = await target();
      loaded.set('isNullObject', reached === NOTHING);
      if (reached === NOTHING) return;
      if (rest.length > 0) throw new Error('unreachable');
      const value = await behaviour.values![name]!(reached, machine.book);
      batch.answered += bytesOf(value);
      loaded.set(name, value);
    };

    const loadItems = async (paths: readonly string[][]): Promise<void> => {
      const reached = await target();
      loaded.set('isNullObject', reached === NOTHING);
      if (reached === NOTHING) return;
      const { of, all } = behaviour.items!;
      const items = (await all(reached, machine.book)).map((one) => make(of, async () => one));
      for (const item of items) for (const path of paths) await loaders.get(item)!(path);
      loaded.set('items', items);
    };

    /** Checks a path when it is asked for; returns what loads it at the sync. */
    const prepare = (path: readonly string[]): void => {
      const [name = '', ...rest] = path;
      if (name === 'items') {
        if (!behaviour.items) throw new HostError('InvalidArgument', `${className} has no items`);
        if (rest.length !== 1) throw new HostError('InvalidArgument', 'name what to load of the items');
        const inner = machine.members[behaviour.items.of]?.[rest[0]!];
        if (!inner || inner.kind !== 'property')
          throw new HostError('InvalidArgument', `${behaviour.items.of} has no ${rest[0]} to load`);
        machine.use(`${behaviour.items.of}.${rest[0]}`, inner.set);
        if (!machine.behaviours[behaviour.items.of]?.values?.[rest[0]!])
          throw new Error(`The fake does not know ${behaviour.items.of}.${rest[0]}.`);
        return;
      }
      const known = member(name);
      if (known.kind !== 'property' || known.gives || rest.length > 0)
        throw new HostError('InvalidArgument', `${className}.${path.join('/')} cannot be loaded like this`);
      if (!behaviour.values?.[name]) throw new Error(`The fake does not know ${className}.${name}.`);
    };

    const load = (option: unknown): object => {
      const paths = pathsOf(option);
      paths.forEach(prepare);
      const items = paths.filter(([name]) => name === 'items').map(([, ...rest]) => rest);
      queue({
        what: `load ${className}`,
        bytes: OVERHEAD + bytesOf(option),
        changes: false,
        noUndo: false,
        run: async () => {
          if (items.length > 0) await loadItems(items);
          for (const path of paths.filter(([name]) => name !== 'items')) await loadOne(path);
        },
      });
      return proxy;
    };

    const call = (name: string, gives: string | undefined, args: readonly unknown[]): unknown => {
      const run = behaviour.calls?.[name];
      if (!run) throw new Error(`The fake does not know ${className}.${name}().`);
      const what = `${className}.${name}`;
      let result: unknown;
      let done = false;
      const perform = async (): Promise<void> => {
        const reached = await something(what);
        const given: unknown[] = [];
        for (const arg of args) given.push(await argument(arg));
        result = await run(reached, given, machine.book);
        done = true;
      };
      queue({
        what,
        bytes: OVERHEAD + bytesOf(args.map(plain)),
        changes: behaviour.changes?.includes(name) ?? false,
        noUndo: behaviour.noUndo?.includes(name) ?? false,
        run: perform,
      });
      if (!gives) return undefined;
      return make(
        gives,
        async () => {
          if (!done) throw new HostError('InvalidObjectPath', `${what} was not carried out`);
          return result;
        },
        name.endsWith('OrNullObject'),
      );
    };

    const handlers = (name: string): object => ({
      add: (handler: (args: unknown) => void) => {
        if (typeof handler !== 'function') throw new HostError('InvalidArgument', 'a handler is a function');
        let off: (() => void) | undefined;
        queue({
          what: `${className}.${name}.add`,
          bytes: OVERHEAD,
          changes: false,
          noUndo: false,
          run: async () => void (off = machine.listen(`${className}.${name}`, handler)),
        });
        return { context, remove: () => off?.() };
      },
    });

    const proxy: object = new Proxy(Object.create(null) as object, {
      get: (_none, name) => {
        if (typeof name === 'symbol' || name === 'then' || name === 'toJSON') return undefined;
        if (name === 'load') return load;
        if (name === 'context') return context;
        if (name === 'isNullObject') {
          if (!mayBeNothing) throw new HostError('InvalidArgument', `${className} cannot be nothing here`);
          if (!loaded.has(name)) throw new HostError('PropertyNotLoaded', `${className}.${name}`);
          return loaded.get(name);
        }
        if (name === 'items' && behaviour.items) {
          if (!loaded.has(name)) throw new HostError('PropertyNotLoaded', `${className}.items`);
          return loaded.get(name);
        }
        const known = member(name);
        if (known.kind === 'events') return handlers(name);
        if (known.kind === 'method') return (...args: unknown[]) => call(name, known.gives, args);
        if (known.gives) return hang(name, known.gives);
        if (!loaded.has(name)) throw new HostError('PropertyNotLoaded', `${className}.${name}`);
        return loaded.get(name);
      },
      set: (_none, name, value) => {
        if (typeof name === 'symbol' || ANYWHERE.has(name))
          throw new HostError('InvalidArgument', `${className}.${String(name)} cannot be set`);
        const known = member(name, true);
        const set = behaviour.sets?.[name];
        if (known.kind !== 'property' || known.readonly)
          throw new HostError('InvalidArgument', `${className}.${name} cannot be set`);
        if (!set) throw new Error(`The fake does not know how to set ${className}.${name}.`);
        // A batch is sent as text: what is changed afterwards does not count.
        const sent: unknown = JSON.parse(JSON.stringify(value ?? null));
        queue({
          what: `${className}.${name} =`,
          bytes: OVERHEAD + bytesOf(sent),
          changes: true,
          noUndo: false,
          run: async () => set(await something(`${className}.${name}`), sent, machine.book),
        });
        return true;
      },
    });
    targets.set(proxy, target);
    loaders.set(proxy, loadOne);
    return proxy;
  };

  const loaders = new WeakMap<object, (path: readonly string[]) => Promise<void>>();
  return { make };
};
