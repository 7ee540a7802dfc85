import type { Block } from '../../../workbook/port';

import { isPending } from './cellState';

/** One glance at cells. */
export interface Glance {
  readonly blocks: readonly Block[];
  /** True while the program calculates. */
  readonly calculating: boolean;
}

/** Longest that reading waits for the functions' answers, and how long between two glances, ms. */
const PATIENCE = 10_000;
const PAUSES = [20, 50, 100, 200, 400];

const pause = (milliseconds: number): Promise<void> =>
  new Promise((resolve) => setTimeout(resolve, milliseconds));

const isOpen = ({ blocks, calculating }: Glance): boolean =>
  calculating || blocks.some(({ cells }) => cells.some((row) => row.some(isPending)));

/**
 * Looks until no cell still waits for a function's answer. The functions run in this page, after the batch that wrote
 * their formulas; whoever looks at once finds them unanswered. What is still open after ten seconds is told as the
 * error that the cell shows.
 */
export const settled = async <T extends Glance>(look: () => Promise<T>): Promise<T> => {
  let seen = await look();
  for (let waited = 0, times = 0; isOpen(seen) && waited < PATIENCE; times += 1) {
    const next = PAUSES[Math.min(times, PAUSES.length - 1)]!;
    await pause(next);
    waited += next;
    seen = await look();
  }
  return seen;
};
