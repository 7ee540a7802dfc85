import type { BookAt } from '../bookAt';
import type { Step } from '../write/step';

/** Puts one thing back as it was, in a batch of its own: what was not begun cannot be taken back, and fails alone. */
export type PutBack = (at: BookAt) => Promise<void>;

/** A step of writing that puts something back. */
export const byStep =
  ({ queue }: Step): PutBack =>
  async (at) => {
    queue(at);
    await at.context.sync();
  };
