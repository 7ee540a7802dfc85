import fc from 'fast-check';

import type { MemoryWorkbook } from '../../../addin/workbook/memoryWorkbook';
import { draws } from './edits';
import { gardens } from './gardens';
import type { LiveBook } from './gridBook';
import { walkThrough } from './walkThrough';

/** What became of many gardens' cards. */
export interface Agreement {
  readonly cards: number;
  /** Edits after which a card followed, and after which it said that it is out of date. */
  readonly followed: number;
  readonly outOfDate: number;
  /** What cards show and ought not to, each with its garden, to be found again by the seed. */
  readonly found: readonly string[];
}

/** Gardens one after the other, the same for the same seed, each with so many edits in its cells. */
export const agreement = async (
  { many, edits, seed }: { readonly many: number; readonly edits: number; readonly seed: number },
  open: (workbook: MemoryWorkbook) => Promise<LiveBook>,
): Promise<Agreement> => {
  const one = fc.tuple(gardens, fc.array(draws, { minLength: edits, maxLength: edits }));
  const found: string[] = [];
  let [cards, followed, outOfDate] = [0, 0, 0];
  for (const [index, [garden, drawn]] of fc.sample(one, { seed, numRuns: many }).entries()) {
    const walked = await walkThrough(garden, drawn, open);
    cards += walked.made ? 1 : 0;
    followed += walked.followed;
    outOfDate += walked.outOfDate;
    found.push(...walked.found.map((told) => `garden ${index} of seed ${seed}: ${told}`));
  }
  return { cards, followed, outOfDate, found };
};
