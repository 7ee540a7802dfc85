import type { PaneState } from '../state';
import type { StepState } from '../view';

import { gardenStep } from './garden';
import { mixStep } from './mix';
import { rigStep } from './rig';

/** The stops before a round, in the order of the way. */
export const PREPARING = ['garden', 'rig', 'mix'] as const;

export type Preparing = (typeof PREPARING)[number];

/** A stop that has nothing yet, and what is to be done there. */
export interface Missing {
  readonly section: Preparing;
  readonly why: string;
}

/** What is to be done at a stop that has nothing yet, as the end of "Next: …". */
const toBegin = (section: Preparing, { garden, ownSheets }: PaneState): string => {
  if (section === 'rig') return 'time a bucket at the wand, and say how big the barrel is';
  if (section === 'mix') return 'say what goes into the barrel';
  const list = ownSheets.length > 0;
  if (garden?.has.plants) return `type your roses into the Plants sheet${list ? ', or adopt a list' : ''}`;
  return list ? 'make the plant inventory from your list' : 'begin an empty garden';
};

/** How each of them stands. */
export const prepared = (state: PaneState): Readonly<Record<Preparing, StepState>> => ({
  garden: gardenStep(state),
  rig: rigStep(state),
  mix: mixStep(state),
});

/** What a round still needs before it is worth planning, in the order of the way. */
export const missingOf = (steps: Readonly<Record<Preparing, StepState>>, state: PaneState): Missing[] =>
  PREPARING.filter((section) => steps[section].kind === 'empty').map((section) => ({
    section,
    why: toBegin(section, state),
  }));
