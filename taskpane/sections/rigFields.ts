import { rigRefusal, type Rig } from '../../addin/core';
import type { Garden, RigSheet } from '../../addin/workbook/garden';
import { flowAtWand, roundRig } from '../../addin/workbook/roundRig';
import { rigForm } from '../../addin/workbook/sheets/rig';
import { askForm, type AskedRow } from '../askFields';
import { firstFault, type Asked } from '../asked';
import type { PaneState } from '../state';

import { askTimes } from './timedBucket';

const TIMED = 'Timed bucket';
/** The fold of what few people change. */
export const MORE = 'Hose, weight and times';
const HEADINGS = [TIMED, 'Barrel and tap', 'At the plants', MORE];

/** The rig and its timed buckets as they stand in the pane. */
export interface RigAnswers {
  readonly asked: AskedRow<RigSheet>;
  readonly times: readonly Asked<number>[];
  /** The garden as it would be once they are kept. */
  readonly kept: Garden;
}

export const askRig = (state: PaneState, garden: Garden): RigAnswers => {
  const { settings, rig } = garden;
  const asked = askForm(state, rigForm, rig, {
    section: 'rig',
    prefix: 'rig.',
    headings: HEADINGS,
    settings,
  });
  const times = askTimes(state, garden.timedBuckets);
  const timedBuckets = times.flatMap(({ value }) => value ?? []);
  return {
    asked,
    times,
    kept: { ...garden, rig: asked.row, timedBuckets, has: { ...garden.has, rig: true } },
  };
};

/** The rig in the planner's units, or why no round can be planned with it. */
export const usableRig = (garden: Garden): Rig | { readonly refused: string } => {
  const rig = roundRig(garden);
  if (Array.isArray(rig)) return { refused: rig[0]?.refused ?? '' };
  return rigRefusal(rig, garden.settings.measures) ?? rig;
};

/** Why the rig cannot be kept as it stands; undefined where it can. */
export const rigFault = ({ asked, times, kept }: RigAnswers): string | undefined => {
  const wrong = asked.fault;
  const fault = wrong?.under === TIMED ? wrong.sentence : (firstFault(times) ?? wrong?.sentence);
  if (fault !== undefined) return fault;
  const { bucket, flow } = kept.rig;
  if (kept.timedBuckets.length > 0 && bucket.value === undefined && flow.value === undefined)
    return 'The bucket holds: nothing was given; use the volume that each time filled.';
  if (flowAtWand(kept) === undefined)
    return 'The flow at the wand is not known: time a bucket, or write the flow.';
  const rig = usableRig(kept);
  return 'refused' in rig ? rig.refused : undefined;
};
