import { rigRefusal, type LitresPerMinute, type Rig } from '../../addin/core';
import type { Entry, Garden, RigSheet, TimedBuckets } from '../../addin/workbook/garden';
import { flowAtWand, roundRig } from '../../addin/workbook/roundRig';
import { askNumber, askToggle, firstFault, unitBeside, type Asked, type NumberQuestion } from '../asked';
import type { PaneState } from '../state';
import { unitChoices } from '../unitChoices';

import type { TimedBucketAnswers } from './timedBucket';

type UnitAsked = Parameters<typeof unitChoices>[1];

const measured = (
  state: PaneState,
  garden: Garden,
  entry: Entry,
  asks: UnitAsked,
  question: Omit<NumberQuestion, 'section' | 'known' | 'unit'>,
): Asked<number> =>
  askNumber(state, {
    section: 'rig',
    known: entry.value,
    unit: { known: entry.unit, choices: unitChoices(garden.settings.measures, asks) },
    ...question,
  });

const plain = (
  state: PaneState,
  known: number | undefined,
  question: Omit<NumberQuestion, 'section' | 'known'>,
) => askNumber(state, { section: 'rig', known, ...question });

/** The rig as it stands in the pane, in the order of its fields: what was typed over what the sheet holds. */
export const askRig = (state: PaneState, garden: Garden) => {
  const { rig } = garden;
  return {
    barrel: measured(state, garden, rig.barrel, 'barrel', {
      id: 'rig.barrel',
      label: 'The barrel holds',
      above: true,
      required: true,
    }),
    fillLine: plain(state, rig.fillLine === undefined ? undefined : rig.fillLine * 100, {
      id: 'rig.fillLine',
      label: 'Filled to',
      unit: '%',
      above: true,
      most: 100,
      help: 'How much of the barrel you fill.',
    }),
    heel: measured(state, garden, rig.heel, 'barrel', {
      id: 'rig.heel',
      label: 'Heel',
      help: 'What the pump leaves at the bottom.',
      required: true,
    }),
    tapFlow: measured(state, garden, rig.tapFlow, 'flow', {
      id: 'rig.tapFlow',
      label: 'The tap gives',
      above: true,
      required: true,
    }),
    betweenPlants: plain(state, rig.betweenPlants, {
      id: 'rig.betweenPlants',
      label: 'From plant to plant',
      unit: 's',
      most: 3600,
      required: true,
    }),
    wandStaysOpen: askToggle(state, {
      section: 'rig',
      id: 'rig.wandStaysOpen',
      label: 'The wand stays open between plants',
      known: rig.wandStaysOpen ?? false,
    }),
    countStep: plain(state, rig.countStep, {
      id: 'rig.countStep',
      label: 'Counts in steps of',
      unit: 's',
      above: true,
      most: 600,
      help: '1 counts every second; 5 counts 5, 10, 15.',
    }),
    hoseLength: measured(state, garden, rig.hoseLength, 'hose', {
      id: 'rig.hoseLength',
      label: 'Hose length',
    }),
    hoseBore: measured(state, garden, rig.hoseBore, 'bore', {
      id: 'rig.hoseBore',
      label: 'Hose bore, inside',
    }),
    emptyWeight: measured(state, garden, rig.emptyWeight, 'weight', {
      id: 'rig.emptyWeight',
      label: 'Empty barrel with pump',
    }),
    premixTime: plain(state, rig.premixTime, {
      id: 'rig.premixTime',
      label: 'Measuring and dissolving, each fill',
      unit: 'min',
      most: 1440,
    }),
    moveTime: plain(state, rig.moveTime, {
      id: 'rig.moveTime',
      label: 'One move of the barrel',
      unit: 'min',
      most: 1440,
    }),
    flow: measured(state, garden, rig.flow, 'flow', {
      id: 'rig.flow',
      label: 'Flow at the wand, if you know it',
      above: true,
      help: 'Leave it blank to use the timed buckets.',
    }),
  };
};

export type RigAnswers = ReturnType<typeof askRig>;

const entryOf = (asked: Asked<number>): Entry => ({
  unit: unitBeside(asked),
  ...(asked.value === undefined ? {} : { value: asked.value }),
});

/** What is to be kept: the sheet's lines and the timed buckets. */
export const rigToKeep = (
  garden: Garden,
  asked: RigAnswers,
  buckets: TimedBucketAnswers,
): { rig: RigSheet; timedBuckets: TimedBuckets } => ({
  rig: {
    barrel: entryOf(asked.barrel),
    fillLine: (asked.fillLine.value ?? 100) / 100,
    heel: entryOf(asked.heel),
    hoseLength: entryOf(asked.hoseLength),
    hoseBore: entryOf(asked.hoseBore),
    hoseHolds: garden.rig.hoseHolds,
    flow: entryOf(asked.flow),
    tapFlow: entryOf(asked.tapFlow),
    betweenPlants: asked.betweenPlants.value,
    wandStaysOpen: asked.wandStaysOpen.value,
    countStep: asked.countStep.value ?? 1,
    emptyWeight: entryOf(asked.emptyWeight),
    premixTime: asked.premixTime.value,
    moveTime: asked.moveTime.value,
  },
  timedBuckets: { bucket: entryOf(buckets.bucket), seconds: buckets.seconds },
});

/** Flow at the wand as the rig would be kept: what the user wrote, else what the buckets come to. */
export const flowOf = (
  garden: Garden,
  asked: RigAnswers,
  buckets: TimedBucketAnswers,
): LitresPerMinute | undefined => flowAtWand({ ...garden, ...rigToKeep(garden, asked, buckets) });

/** The rig in the planner's units, or why no round can be planned with it. */
export const usableRig = (garden: Garden): Rig | { readonly refused: string } => {
  const rig = roundRig(garden);
  if (Array.isArray(rig)) return { refused: rig[0]?.refused ?? '' };
  return rigRefusal(rig, garden.settings.measures) ?? rig;
};

/** Why the rig cannot be kept as it stands; undefined where it can. */
export const rigFault = (
  garden: Garden,
  asked: RigAnswers,
  buckets: TimedBucketAnswers,
): string | undefined => {
  const fault = firstFault([buckets.bucket, ...buckets.times, ...Object.values(asked)]);
  if (fault !== undefined) return fault;
  if (buckets.seconds.length > 0 && buckets.bucket.value === undefined && asked.flow.value === undefined)
    return 'The bucket holds: nothing was given; use the volume that each time filled.';
  if (flowOf(garden, asked, buckets) === undefined)
    return 'The flow at the wand is not known: time a bucket, or write the flow.';
  const has = { ...garden.has, rig: true };
  const rig = usableRig({ ...garden, ...rigToKeep(garden, asked, buckets), has });
  return 'refused' in rig ? rig.refused : undefined;
};
