import {
  barrelVolume,
  findUnit,
  grams,
  litres,
  meanFlow,
  metres,
  seconds,
  toCanonical,
  type Family,
  type Litres,
  type LitresPerMinute,
  type Quantity,
  type Refusal,
  type Rig,
} from '../core';
import type { Entry } from './fields/holds';
import type { Garden, RigSheet } from './garden';
import { rigForm } from './sheets/rig';

const MINUTE = 60;

const refusal = (refused: string): Refusal => ({ refused, place: 'rig' });

/** A line in the canonical unit of its family; undefined where it is blank. */
export const canonical = <F extends Family>({ value, unit }: Entry, family: F): Quantity<F> | undefined => {
  const known = findUnit(unit, family);
  return value === undefined || known === undefined ? undefined : toCanonical(value, known);
};

type Timed = Pick<Garden, 'rig' | 'timedBuckets'>;

/** What the timed buckets come to, L/min; undefined while the bucket or every time is missing. */
export const flowOfBuckets = ({ rig, timedBuckets }: Timed): LitresPerMinute | undefined => {
  const bucket = canonical(rig.bucket, 'volume');
  return bucket === undefined || timedBuckets.length === 0
    ? undefined
    : meanFlow(bucket, timedBuckets.map(seconds));
};

/** Flow at the wand, L/min: the number typed on the rig's sheet, else what the timed buckets come to, if anything. */
export const flowAtWand = (timed: Timed): LitresPerMinute | undefined =>
  canonical(timed.rig.flow, 'flow') ?? flowOfBuckets(timed);

/** What the hose holds, L: the number typed, else from length and bore; 0 where either is blank. */
export const hoseContent = ({ hoseHolds, hoseLength, hoseBore }: RigSheet): Litres => {
  const length = canonical(hoseLength, 'length') ?? metres(0);
  const bore = canonical(hoseBore, 'length') ?? metres(0);
  return canonical(hoseHolds, 'volume') ?? (length > 0 && bore > 0 ? barrelVolume(length, bore) : litres(0));
};

/** Share of the barrel that is filled; to the brim where that is blank. */
export const fillLine = (rig: RigSheet): number => rig.fillLine ?? rigForm.lines.fillLine.start;

/** The rig in the planner's units, or every line that is missing. */
export const roundRig = (garden: Garden): Rig | Refusal[] => {
  const { rig } = garden;
  const barrel = canonical(rig.barrel, 'volume');
  const flow = flowAtWand(garden);
  const tapFlow = canonical(rig.tapFlow, 'flow');
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
    barrel,
    fillLine: fillLine(rig),
    heel: canonical(rig.heel, 'volume') ?? litres(0),
    flow,
    tapFlow,
    hoseContent: hoseContent(rig),
    betweenPlants: seconds(rig.betweenPlants ?? 0),
    wandStaysOpen: rig.wandStaysOpen ?? false,
    countStep: seconds(rig.countStep ?? rigForm.lines.countStep.start),
    emptyWeight: canonical(rig.emptyWeight, 'mass') ?? grams(0),
    premixTime: seconds((rig.premixTime ?? 0) * MINUTE),
    moveTime: seconds((rig.moveTime ?? 0) * MINUTE),
  };
};
