import { findUnit, litres, toCanonical, workingVolume } from '../../addin/core';
import type { Garden } from '../../addin/workbook/garden';
import { flowAtWand } from '../../addin/workbook/roundRig';
import { unitBeside } from '../asked';
import { inUnitWords } from '../quantityWords';
import type { PaneState } from '../state';
import type { Section, StepState } from '../view';

import { fold } from './fold';
import { goingOn, keeping } from './leading';
import { problemBlocks } from './problems';
import { askRig, flowOf, usableRig, type RigAnswers } from './rigFields';
import { askTimedBuckets, timedBucketBlocks, type TimedBucketAnswers } from './timedBucket';

const answerOf = (garden: Garden, asked: RigAnswers, buckets: TimedBucketAnswers): string => {
  const flow = flowOf(garden, asked, buckets);
  const [barrelUnit, heelUnit] = [findUnit(unitBeside(asked.barrel)), findUnit(unitBeside(asked.heel))];
  const at = flow === undefined ? undefined : `${inUnitWords(flow, garden.rig.flow.unit)} at the wand`;
  if (asked.barrel.value === undefined || barrelUnit === undefined || heelUnit === undefined)
    return at ?? 'Time a bucket at the wand and say how big the barrel is.';
  const barrel = litres(toCanonical(asked.barrel.value, barrelUnit));
  const working = workingVolume(
    barrel,
    litres(toCanonical(asked.heel.value ?? 0, heelUnit)),
    (asked.fillLine.value ?? 100) / 100,
  );
  if (!(working > 0)) return 'The heel takes up the whole barrel: nothing is left to pump.';
  const gives = `${inUnitWords(working, barrelUnit.token)} from each fill`;
  return at === undefined ? `${gives}; time a bucket to know the flow` : `${at}, ${gives}`;
};

/** Whether the sheets hold a rig to plan with. */
export const rigStep = ({ garden }: PaneState): StepState => {
  if (garden === undefined || !garden.has.rig) return { kind: 'empty' };
  const wrong = garden.problems.find(({ place }) => place === 'rig');
  if (wrong !== undefined) return { kind: 'attention', why: wrong.sentence };
  const flow = flowAtWand(garden);
  if (garden.rig.barrel.value === undefined && flow === undefined) return { kind: 'empty' };
  const rig = usableRig(garden);
  if ('refused' in rig) return { kind: 'attention', why: rig.refused };
  return { kind: 'ready', says: `${inUnitWords(rig.flow, garden.rig.flow.unit)} at the wand` };
};

export const rigSection = (state: PaneState, garden: Garden): Section => {
  const asked = askRig(state, garden);
  const buckets = askTimedBuckets(state, garden);
  const flowUnit = garden.rig.flow.unit;
  const step = rigStep(state);
  return {
    id: 'rig',
    title: 'Rig',
    answer: answerOf(garden, asked, buckets),
    blocks: [
      ...problemBlocks(garden.problems, ['rig']),
      ...timedBucketBlocks(buckets, flowUnit),
      {
        kind: 'fields',
        legend: 'Barrel and tap',
        fields: [asked.barrel.field, asked.fillLine.field, asked.heel.field, asked.tapFlow.field],
      },
      {
        kind: 'fields',
        legend: 'At the plants',
        fields: [asked.betweenPlants.field, asked.wandStaysOpen.field, asked.countStep.field],
      },
      {
        kind: 'actions',
        actions: [
          keeping(state, step, ['rig.'], { id: 'rig.keep', label: 'Keep this rig' }),
          ...goingOn(state, step, ['rig.'], { id: 'mix', label: 'Mix' }),
        ],
      },
      fold(state, 'rig.more', 'Hose, weight and times', [
        {
          kind: 'fields',
          fields: [
            asked.hoseLength.field,
            asked.hoseBore.field,
            asked.emptyWeight.field,
            asked.premixTime.field,
            asked.moveTime.field,
            asked.flow.field,
          ],
        },
      ]),
    ],
  };
};
