import { expect, test } from 'vitest';

import { agreement } from './liveCard/agreement';
import { gridBook } from './liveCard/gridBook';

/** The same gardens in each run; `npm run agree` goes through others, with more edits each. */
const ASKED = process.env.WANDCOUNT_GARDENS;
const MANY = Number(ASKED ?? 100);
const EDITS = ASKED === undefined ? 2 : 6;
const SEED = Number(process.env.WANDCOUNT_SEED);

test(
  'card, tank sheet and computed columns are what the planner says of the cells now; the card keeps to every label, or says that it is out of date',
  async () => {
    const { cards, followed, outOfDate, found } = await agreement(
      { many: MANY, edits: EDITS, seed: SEED },
      gridBook,
    );
    console.log(`${cards} cards: ${followed} edits followed, ${outOfDate} cards out of date`);
    expect(found).toEqual([]);
    // Most gardens can be planned, and most edits followed.
    expect(cards).toBeGreaterThan(MANY * 0.8);
    expect(followed).toBeGreaterThan(cards * EDITS * 0.5);
    expect(outOfDate).toBeGreaterThan(cards * EDITS * 0.08);
  },
  30_000 + MANY * 30_000,
);
