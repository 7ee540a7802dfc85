import type { FileBook, FileRows } from './fileBook';
import { FileRefused } from './fileRefused';
import { readFile } from './readFile';

/** What a page asks of the worker, once. */
export interface ReadAsked {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** What it hears, until a book or a sentence ends it. */
export type ReadTold =
  | { readonly kind: 'rows'; readonly rows: FileRows }
  | { readonly kind: 'progress'; readonly done: number; readonly of: number }
  | { readonly kind: 'book'; readonly book: FileBook }
  | { readonly kind: 'refused'; readonly sentence: string }
  | { readonly kind: 'failed'; readonly message: string };

/* The worker's own script: a file is read beside the page, which goes on meanwhile. */

const tell = (told: ReadTold): void => postMessage(told);

addEventListener('message', ({ data: { name, bytes } }: MessageEvent<ReadAsked>) => {
  readFile(name, bytes, {
    rows: (rows) => tell({ kind: 'rows', rows }),
    progress: (done, of) => tell({ kind: 'progress', done, of }),
  }).then(
    (book) => tell({ kind: 'book', book }),
    (reason: unknown) =>
      tell(
        reason instanceof FileRefused
          ? { kind: 'refused', sentence: reason.message }
          : { kind: 'failed', message: reason instanceof Error ? reason.message : String(reason) },
      ),
  );
});
