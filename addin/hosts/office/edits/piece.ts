import type { BookAt } from '../bookAt';

/** A piece of writing: what it queues, and about how many bytes of a request that is. */
export interface Piece {
  readonly bytes: number;
  readonly queue: (at: BookAt) => void;
}

/** About what one property or call takes in a request, with the path of its object. */
export const BYTES_A_CALL = 250;

/** A piece of writing of so many properties and calls. */
export const piece = (calls: number, queue: Piece['queue']): Piece => ({
  bytes: calls * BYTES_A_CALL,
  queue,
});

/** The program takes 5 MB in a request. */
const BYTES_AT_ONCE = 4_000_000;

/** Queues the steps and sends them, as few requests as their size allows: without grouping each is a step of the undo. */
export const send = async (at: BookAt, pieces: readonly Piece[]): Promise<void> => {
  let bytes = 0;
  for (const { bytes: more, queue } of pieces) {
    if (bytes > 0 && bytes + more > BYTES_AT_ONCE) {
      await at.context.sync();
      bytes = 0;
    }
    queue(at);
    bytes += more;
  }
  if (bytes > 0) await at.context.sync();
};
