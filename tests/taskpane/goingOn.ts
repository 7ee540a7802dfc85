import { cellAddress } from '../../addin/workbook/address';
import { labelOf } from '../../addin/workbook/snapshot';
import { placeIn, type Kept } from '../workbook/earlierFiles';
import type { Cells } from '../workbook/stillThere';
import { keepTheMix, keepTheRig, makeTheCard, writeTheLog, type Grower } from './grower';

/** Somebody who goes on with a garden: at its pane, and with a hand on its sheets. */
export interface Gardener extends Grower {
  /** Types into a cell such as "Plants!A5". */
  type(place: string, typed: string | number): Promise<void>;
}

/** A step on the way to the next line of the log. */
export interface StepOn {
  readonly says: string;
  /** @param cells as the garden was opened */
  does(gardener: Gardener, cells: Cells): Promise<void>;
  /** What stands in the workbook after it. */
  readonly kept: Kept;
  /** Entries of the opened workbook that it was to change, as the line of each ends. */
  readonly changes: readonly string[];
}

const DAY = '2026-06-07';
const TYPED_ROSE = ['Late Comer', 'Gate bed', 'Bush', 4] as const;

/** The cell below a heading, and those to the right of it. */
const typeBelow = async (
  gardener: Gardener,
  cells: Cells,
  [sheet, heading]: readonly [string, string],
  line: readonly (string | number)[],
): Promise<void> => {
  const [found] = [...cells].find(
    ([place, cell]) => place.startsWith(`${sheet}!`) && labelOf(cell) === heading,
  )!;
  const { row, column } = placeIn(found);
  for (const [across, typed] of line.entries())
    await gardener.type(`${sheet}!${cellAddress(row + 1, column + across)}`, typed);
};

/** Puts roses into a garden that has none: from the list, or by hand. */
const rosesOn = (kept: Kept, inventory: Kept): Omit<StepOn, 'changes'> =>
  Object.keys(kept.own).length > 0
    ? {
        says: 'the inventory is made of the list',
        does: async (gardener) => {
          await gardener.open('Garden');
          await gardener.press('Make the plant inventory');
        },
        kept: { ...kept, plants: inventory.plants, beds: inventory.beds, doses: inventory.doses },
      }
    : {
        says: 'a rose is typed into the plants',
        does: (gardener, cells) => typeBelow(gardener, cells, ['Plants', 'Plant'], TYPED_ROSE),
        // The next action gives its bed a line.
        kept: {
          ...kept,
          plants: [TYPED_ROSE],
          beds: [['Gate bed', 1, 'A']],
          doses: { Bush: inventory.doses['Bush']! },
        },
      };

/**
 * The steps from a garden as it was saved to one more line of its log, each with what then stands in it. The round that
 * was fed by its card is logged first: that card may be the last thing that an earlier program did.
 *
 * @param inventory what the same garden holds once its list is adopted
 */
export const stepsOn = (saved: Kept, inventory: Kept): StepOn[] => {
  const steps: StepOn[] = [];
  // An untouched list has no sheet with doses yet, an empty garden has.
  const hasDoses = saved.plants.length > 0 || Object.keys(saved.own).length === 0;
  let kept = saved;
  const step = (says: string, does: StepOn['does'], next: Partial<Kept>, changes: readonly string[] = []) => {
    kept = { ...kept, ...next };
    steps.push({ says, does, kept, changes });
  };
  const log = (leftOver: number, notes: string) =>
    step('the round of the card is logged', (gardener) => writeTheLog(gardener, String(leftOver), notes), {
      log: [...kept.log, { day: kept.card!.day, leftOver, notes }],
    });

  if (kept.card !== undefined) log(4, 'fed by the earlier card');
  if (kept.plants.length === 0) {
    const { says, does, kept: next } = rosesOn(kept, inventory);
    step(says, does, next);
  }
  step(
    'a dose is kept',
    async (gardener) => {
      await gardener.open('Garden');
      await gardener.fill('Dose for one Bush', '0.5');
      await gardener.press('Keep the doses');
    },
    { doses: { ...kept.doses, Bush: 0.5 } },
    hasDoses ? [`: ${kept.doses['Bush']} is 0.5`] : [],
  );
  if (kept.barrel === undefined)
    step('the rig is kept', keepTheRig, { barrel: '60 gal', seconds: [46.1, 45.8, 46.6] });
  else
    step(
      'another barrel is kept',
      async (gardener) => {
        await gardener.open('Rig');
        await gardener.fill('The barrel holds', '55');
        await gardener.press('Keep this rig');
      },
      { barrel: '55 gal' },
      [': 60 is 55'],
    );
  const [first, ...others] = kept.mix;
  if (first === undefined)
    step('products and a mix are kept', keepTheMix, {
      products: [
        ['Soluble powder 20-20-20', 'powder', '1 tbsp/gal'],
        ['Fish and kelp liquid', 'liquid', '2 tbsp/gal'],
      ],
      mix: [
        ['Soluble powder 20-20-20', '1 tbsp/gal'],
        ['Fish and kelp liquid', '2 tbsp/gal'],
      ],
    });
  else
    step(
      'a rate within the label is kept',
      async (gardener) => {
        await gardener.open('Mix');
        await gardener.fill('Rate of product 1', '0.5');
        await gardener.press('Keep this mix');
      },
      { mix: [[first[0], '0.5 tbsp/gal'], ...others] },
      [`: ${first[1].split(' ')[0]} is 0.5`],
    );
  step('the card is made', (gardener) => makeTheCard(gardener, DAY), {
    card: {
      day: DAY,
      mix: 'Bloom feed',
      plants: kept.plants.reduce((sum, [, , , howMany]) => sum + howMany, 0),
      products: kept.mix.map(([product]) => product),
    },
  });
  log(1.5, 'and on it goes');
  return steps;
};
