import { expect, test } from 'vitest';

import { agreement } from './liveCard/agreement';
import { gridBook } from './liveCard/gridBook';

/** The same gardens in each run; `npm run agree` goes through others. */
const MANY = Number(process.env.WANDCOUNT_GARDENS ?? 40);
const SEED = Number(process.env.WANDCOUNT_SEED);

test(
  'a card shows what the planner says of the cells now and keeps to every label, or says that it is out of date',
  async () => {
    const { cards, followed, outOfDate, found } = await agreement(
      { many: MANY, edits: 6, seed: SEED },
      gridBook,
    );
    console.log(`${cards} cards: ${followed} edits followed, ${outOfDate} cards out of date`);
    expect(found).toEqual([]);
    // Most gardens can be planned, and most edits followed.
    expect(cards).toBeGreaterThan(MANY * 0.8);
    expect(followed).toBeGreaterThan(cards * 3);
    expect(outOfDate).toBeGreaterThan(cards * 0.5);
  },
  30_000 + MANY * 30_000,
);
