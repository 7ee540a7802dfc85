import type { BookData } from './grid/bookData';

/** A workbook that was not saved, as it last stood. */
export interface Draft {
  readonly id: string;
  readonly name: string;
  /** Milliseconds since 1970. */
  readonly at: number;
  readonly book: BookData;
}

export interface Drafts {
  /** Keeps how the workbook stands now, in place of what this page kept before. */
  keep(name: string, book: BookData): Promise<void>;
  /** Forgets what this page kept. */
  forget(): Promise<void>;
  /** Drafts that pages left behind which are no longer open, the newest first. */
  leftBehind(): Promise<readonly Draft[]>;
  /** Forgets a draft that another page left behind. */
  discard(id: string): Promise<void>;
}

const STORE = 'drafts';
const lockOf = (id: string): string => `wandcount-draft-${id}`;

const asked = <Result>(request: IDBRequest<Result>): Promise<Result> =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error ?? new Error('The browser did not give its store.'));
  });

const openStore = (): Promise<IDBDatabase> => {
  const request = indexedDB.open('wandcount', 1);
  request.onupgradeneeded = () => request.result.createObjectStore(STORE, { keyPath: 'id' });
  return asked(request);
};

/**
 * Drafts in the browser's own store, one for each open page. A page holds a lock on its draft for as long as it
 * lives, so that a draft without one is known to be left behind by a page that was closed or crashed.
 */
export const openDrafts = async (): Promise<Drafts> => {
  const store = await openStore();
  const own = crypto.randomUUID();
  void navigator.locks.request(lockOf(own), () => new Promise(() => undefined));
  const run = <Result>(
    mode: IDBTransactionMode,
    use: (drafts: IDBObjectStore) => IDBRequest<Result>,
  ): Promise<Result> => asked(use(store.transaction(STORE, mode).objectStore(STORE)));
  const discard = async (id: string): Promise<void> =>
    void (await run('readwrite', (drafts) => drafts.delete(id)));
  return {
    keep: async (name, book) => {
      const draft: Draft = { id: own, name, at: Date.now(), book };
      await run('readwrite', (drafts) => drafts.put(draft));
    },
    forget: () => discard(own),
    leftBehind: async () => {
      const held = new Set((await navigator.locks.query()).held?.map(({ name }) => name));
      const drafts = (await run('readonly', (all) => all.getAll())) as Draft[];
      return drafts.filter(({ id }) => !held.has(lockOf(id))).sort((a, b) => b.at - a.at);
    },
    discard,
  };
};
