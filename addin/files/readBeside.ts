import type { FileBook, FileListener } from './fileBook';
import { FileRefused } from './fileRefused';
import type { ReadAsked, ReadTold } from './readWorker';

/** What of a worker is used here. */
export type Reader = Pick<Worker, 'postMessage' | 'terminate' | 'onmessage' | 'onmessageerror' | 'onerror'>;

export interface Beside {
  /** Stops the reading at any stage. */
  readonly signal?: AbortSignal;
  /** How long the worker may be silent, ms. */
  readonly patience?: number;
  readonly start?: () => Reader;
}

/** The longest step without a word is the unpacking of the largest file there may be. */
const PATIENCE = 60_000;

const startReader = (): Reader =>
  new Worker(/* webpackChunkName: "read-file" */ new URL('./readWorker.ts', import.meta.url));

let ready: Reader | undefined;

/** Starts the worker of the next reading, so that it is there when the file is. */
export const readyReader = (start: () => Reader = startReader): void => {
  ready ??= start();
  // The next reading then begins with another one, and hears of it.
  ready.onerror = () => {
    ready = undefined;
  };
};

const nextReader = (): Reader => {
  const reader = ready ?? startReader();
  ready = undefined;
  return reader;
};

/**
 * Reads a spreadsheet file as `readFile` does, in a worker of its own, which ends with the reading. Runs in pages.
 *
 * @param bytes pass over to the worker and are empty afterwards
 * @throws FileRefused with a plain sentence, also where the worker dies or hangs; the signal's reason where it stops
 */
export const readBeside = (
  name: string,
  bytes: Uint8Array<ArrayBuffer>,
  listener: FileListener,
  { signal, patience = PATIENCE, start = nextReader }: Beside = {},
): Promise<FileBook> =>
  new Promise((resolve, reject) => {
    signal?.throwIfAborted();
    const reader = start();
    let silence: ReturnType<typeof setTimeout> | undefined;
    const end = (): void => {
      clearTimeout(silence);
      signal?.removeEventListener('abort', stop);
      // What it has sent already would still come.
      reader.onmessage = null;
      reader.terminate();
    };
    const fail = (reason: unknown): void => {
      end();
      reject(reason as Error);
    };
    const stop = (): void => fail(signal?.reason);
    const died = (cause: unknown): void =>
      fail(
        new FileRefused(
          `“${name}” was not opened: the part of the page that reads files broke off. Load the page again, then open it once more.`,
          { cause },
        ),
      );
    const heard = (): void => {
      clearTimeout(silence);
      silence = setTimeout(
        () =>
          fail(new FileRefused(`“${name}” was not opened: reading it stopped halfway. Try it once more.`)),
        patience,
      );
    };
    const take = (told: ReadTold): void => {
      switch (told.kind) {
        case 'rows':
          return listener.rows(told.rows);
        case 'progress':
          return listener.progress(told.done, told.of);
        case 'book':
          end();
          return resolve(told.book);
        case 'refused':
          return fail(new FileRefused(told.sentence));
        case 'failed':
          return fail(new Error(told.message));
      }
    };
    signal?.addEventListener('abort', stop);
    reader.onerror = died;
    reader.onmessageerror = died;
    reader.onmessage = ({ data }: MessageEvent<ReadTold>) => {
      heard();
      try {
        take(data);
      } catch (reason) {
        fail(reason);
      }
    };
    heard();
    const asked: ReadAsked = { name, bytes };
    reader.postMessage(asked, [bytes.buffer]);
  });
