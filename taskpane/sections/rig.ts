import { litres, workingVolume } from '../../addin/core';
import type { Garden } from '../../addin/workbook/garden';
import { canonical, fillLine, flowAtWand } from '../../addin/workbook/roundRig';
import { inUnitWords } from '../quantityWords';
import type { PaneState } from '../state';
import type { Block, Section, StepState } from '../view';

import { fold } from './fold';
import { goingOn, keeping } from './leading';
import { problemBlocks } from './problems';
import { askRig, MORE, usableRig } from './rigFields';
import { timedBucketBlocks } from './timedBucket';

const answerOf = (garden: Garden): string => {
  const { rig } = garden;
  const flow = flowAtWand(garden);
  const at = flow === undefined ? undefined : `${inUnitWords(flow, rig.flow.unit)} at the wand`;
  const barrel = canonical(rig.barrel, 'volume');
  if (barrel === undefined) return at ?? 'Time a bucket at the wand and say how big the barrel is.';
  const working = workingVolume(barrel, canonical(rig.heel, 'volume') ?? litres(0), fillLine(rig));
  if (!(working > 0)) return 'The heel takes up the whole barrel: nothing is left to pump.';
  const gives = `${inUnitWords(working, rig.barrel.unit)} from each fill`;
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
  const { asked, times, kept } = askRig(state, garden);
  const step = rigStep(state);
  const fields = (legend: string): Block => ({ kind: 'fields', legend, fields: asked.under(legend) });
  return {
    id: 'rig',
    title: 'Rig',
    answer: answerOf(kept),
    blocks: [
      ...problemBlocks(garden.problems, ['rig']),
      ...timedBucketBlocks(asked.under('Timed bucket'), times, kept),
      fields('Barrel and tap'),
      fields('At the plants'),
      {
        kind: 'actions',
        actions: [
          keeping(state, step, ['rig.'], { id: 'rig.keep', label: 'Keep this rig' }),
          ...goingOn(state, step, ['rig.'], { id: 'mix', label: 'Mix' }),
        ],
      },
      fold(state, 'rig.more', MORE, [{ kind: 'fields', fields: asked.under(MORE) }]),
    ],
  };
};
