import type { Edit } from '../../../workbook/change';
import type { BookAt } from '../bookAt';
import type { KnownBook } from '../read/readOutline';

import type { Piece } from './piece';

/** A change that is about to be written, and the workbook before it. */
export interface Before {
  readonly at: BookAt;
  readonly book: KnownBook;
  /** Whether the program has a version of the set ExcelApi. */
  readonly supports: (version: string) => boolean;
  readonly edits: readonly Edit[];
  /** Those on sheets that are there already: on new ones there is nothing to put back. */
  readonly over: readonly Edit[];
}

/**
 * Puts one thing back as it was, in a batch of its own: what was not begun cannot be taken back, and fails alone.
 *
 * @param cause why the change could not be written
 */
export type PutBack = (at: BookAt, cause: unknown) => Promise<void>;

/** How edits are written, and the way back from there. */
export interface Prepared {
  readonly pieces: readonly Piece[];
  /** What does not come back; done after everything else. */
  readonly last?: readonly Piece[];
  readonly putBack: readonly PutBack[];
}

/** Prepares the edits of a kind: reads what they overwrite, and writes nothing. */
export type Prepare = (before: Before) => Promise<Prepared>;

/** What the program told, without the parts that it does not have and would not take back. */
export const given = <T extends object>(told: T): T =>
  Object.fromEntries(Object.entries(told).filter(([, value]) => value !== null && value !== undefined)) as T;

/** A step of writing that puts something back. */
export const byPiece =
  ({ queue }: Piece): PutBack =>
  async (at) => {
    queue(at);
    await at.context.sync();
  };
