import {
  barrelVolume,
  findUnit,
  grams,
  litres,
  litresPerMinute,
  meanFlow,
  metres,
  seconds,
  toCanonical,
  type Litres,
  type LitresPerMinute,
  type Refusal,
  type Rig,
} from '../core';
import type { Entry, Garden, RigSheet } from './garden';
import { PACE } from './sheets/defaults';

const MINUTE = 60;

const refusal = (refused: string): Refusal => ({ refused, place: 'rig' });

/** A line of the rig in the canonical unit of its family; undefined where it is blank. */
const canonical = ({ value, unit }: Entry): number | undefined => {
  const known = findUnit(unit);
  return value === undefined || known === undefined ? undefined : toCanonical(value, known);
};

/**
 * Flow at the wand, L/min: the number typed on the rig's sheet, else what the timed buckets come to.
 *
 * @returns undefined while there is neither
 */
export const flowAtWand = ({ rig, timedBuckets }: Garden): LitresPerMinute | undefined => {
  const typed = canonical(rig.flow);
  if (typed !== undefined) return litresPerMinute(typed);
  const bucket = canonical(timedBuckets.bucket);
  return bucket === undefined || timedBuckets.seconds.length === 0
    ? undefined
    : meanFlow(litres(bucket), timedBuckets.seconds.map(seconds));
};

/** What the hose holds, L: the number typed, else from length and bore; 0 where either is blank. */
export const hoseContent = ({ hoseHolds, hoseLength, hoseBore }: RigSheet): Litres => {
  const typed = canonical(hoseHolds);
  if (typed !== undefined) return litres(typed);
  const length = canonical(hoseLength) ?? 0;
  const bore = canonical(hoseBore) ?? 0;
  return length > 0 && bore > 0 ? barrelVolume(metres(length), metres(bore)) : litres(0);
};

/** The rig in the planner's units, or every line that is missing. */
export const roundRig = (garden: Garden): Rig | Refusal[] => {
  const { rig } = garden;
  const barrel = canonical(rig.barrel);
  const flow = flowAtWand(garden);
  const tapFlow = canonical(rig.tapFlow);
  if (!garden.has.rig) return [refusal('The rig is not known yet: give the barrel and time a bucket.')];
  if (barrel === undefined || flow === undefined || tapFlow === undefined)
    return [
      barrel === undefined ? 'Barrel: nothing was given; use what it holds, filled to the brim.' : '',
      flow === undefined
        ? 'Flow at the wand: nothing was given; time a bucket, or use a number above 0.'
        : '',
      tapFlow === undefined ? 'Flow of the tap: nothing was given; use a number above 0.' : '',
    ]
      .filter((sentence) => sentence !== '')
      .map(refusal);
  return {
    barrel: litres(barrel),
    fillLine: rig.fillLine ?? PACE.fillLine,
    heel: litres(canonical(rig.heel) ?? 0),
    flow,
    tapFlow: litresPerMinute(tapFlow),
    hoseContent: hoseContent(rig),
    betweenPlants: seconds(rig.betweenPlants ?? 0),
    wandStaysOpen: rig.wandStaysOpen ?? false,
    countStep: seconds(rig.countStep ?? PACE.countStep),
    emptyWeight: grams(canonical(rig.emptyWeight) ?? 0),
    premixTime: seconds((rig.premixTime ?? 0) * MINUTE),
    moveTime: seconds((rig.moveTime ?? 0) * MINUTE),
  };
};
