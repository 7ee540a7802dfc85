type Settings = Pick<Office.Settings, 'get' | 'set' | 'saveAsync'>;

/** The add-in's settings in a document, after the platform's types: https://learn.microsoft.com/javascript/api/office/office.settings */
export interface FakeSettings {
  /** The copy in memory that a new runtime gets: what was saved, and nothing that was only set. */
  open(): Settings;
  /** What the document holds, by name. */
  readonly saved: Readonly<Record<string, unknown>>;
  /** Answers the save that is under way. */
  answer(): void;
  /** Saves are answered by themselves, a little later; otherwise when told to. */
  answersItself: boolean;
  /** The document is open for reading: no save succeeds. */
  readOnly: boolean;
  readonly saves: number;
}

const asKept = (value: unknown): unknown => {
  const text = JSON.stringify(value);
  if (text === undefined) throw new Error('A setting is kept as JSON, which this is not.');
  return JSON.parse(text);
};

/** Refuses members that the platform's settings have and the add-in has no use for, or that they have not. */
const strict = (settings: Settings): Settings =>
  new Proxy(settings, {
    get: (target, name) => {
      if (Object.hasOwn(target, name)) return target[name as keyof Settings];
      throw new Error(`Settings.${String(name)} is not faked.`);
    },
    set: (_target, name) => {
      throw new Error(`Settings.${String(name)} cannot be set.`);
    },
  });

export const fakeSettings = (): FakeSettings => {
  let saved: Record<string, unknown> = {};
  let underWay: (() => void) | undefined;
  const fake = {
    get saved() {
      return saved;
    },
    saves: 0,
    answersItself: true,
    readOnly: false,
    answer: () => {
      const done = underWay;
      if (!done) throw new Error('Nothing is being saved.');
      underWay = undefined;
      done();
    },
    open: (): Settings => {
      const memory = structuredClone(saved);
      return strict({
        get: (name: string): unknown => (Object.hasOwn(memory, name) ? structuredClone(memory[name]) : null),
        set: (name: string, value: unknown) => {
          memory[name] = asKept(value);
        },
        saveAsync: (callback?: unknown) => {
          // Its one option is no longer to be used, and fails in some programs.
          if (typeof callback !== 'function') throw new Error('saveAsync is given a function to answer to.');
          if (underWay) throw new Error('One save is under way already.');
          fake.saves += 1;
          const taken = structuredClone(memory);
          underWay = () => {
            if (!fake.readOnly) saved = taken;
            const error = { message: 'The settings could not be saved.' };
            callback(fake.readOnly ? { status: 'failed', error } : { status: 'succeeded' });
          };
          if (fake.answersItself) setTimeout(() => underWay && fake.answer(), 1);
        },
      });
    },
  };
  return fake;
};
