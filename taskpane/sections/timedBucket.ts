import { repeatsNeeded, seconds, spread } from '../../addin/core';
import type { Garden } from '../../addin/workbook/garden';
import { flowOfBuckets } from '../../addin/workbook/roundRig';
import { timedBucketsTable } from '../../addin/workbook/sheets/timedBuckets';
import { askNumber, type Asked } from '../asked';
import { inUnitWords, percentWords, plural } from '../quantityWords';
import type { PaneState } from '../state';
import type { Block, Field } from '../view';

/** The share of the mean that repeats are asked to keep within. */
const WITHIN = 0.05;
/** At least three runs: published practice (NC State, WQWM-152). */
const FEWEST = 3;
const MOST = 200;

const timeId = (index: number): string => `rig.time.${index + 1}`;

/** One empty time more than there are, so that the next repeat has a place to be typed. */
export const askTimes = (state: PaneState, known: readonly number[]): Asked<number>[] => {
  const { holds, ask } = timedBucketsTable.fields.seconds;
  const asked: Asked<number>[] = [];
  for (let index = 0; index < MOST; index += 1) {
    const time = askNumber(state, {
      section: 'rig',
      id: timeId(index),
      label: `${ask.label} ${index + 1}`,
      known: known[index],
      unit: ask.unit,
      range: holds.range,
    });
    asked.push(time);
    const later = index + 1 < known.length || state.typed[timeId(index + 1)] !== undefined;
    if (time.field.value.trim() === '' && !later && asked.length >= FEWEST) break;
  }
  return asked;
};

/** Mean, spread and repeats needed, in one sentence each. */
const timedBucketWords = (garden: Garden): string => {
  const { rig, timedBuckets: given } = garden;
  const flow = flowOfBuckets(garden);
  if (flow === undefined) return 'Type how many seconds each bucket took.';
  const mean = `Mean flow ${inUnitWords(flow, rig.flow.unit)}`;
  const readings = given.map(seconds);
  const variation = spread(readings);
  if (variation === undefined)
    return `${mean} from one bucket. Time it ${FEWEST} times: one time tells no spread.`;
  const apart = `${mean}, spread ${percentWords(variation)}.`;
  const needed = repeatsNeeded(readings, WITHIN);
  if (needed === undefined)
    return `${apart} The times are too far apart for ±5 %: check the hose and the pump, then time again.`;
  if (given.length >= needed) return `${apart} ${given.length} times are enough for ±5 %.`;
  return `${apart} For ±5 %, time it ${plural(needed - given.length, 'more time')}, ${needed} in all.`;
};

export const timedBucketBlocks = (
  bucket: readonly Field[],
  times: readonly Asked<number>[],
  kept: Garden,
): Block[] => [
  { kind: 'heading', text: 'Timed bucket' },
  {
    kind: 'text',
    tone: 'quiet',
    text: 'Fill a bucket through the wand, the hose laid as you use it and the barrel half full. Time it at least three times.',
  },
  { kind: 'fields', fields: [...bucket, ...times.map(({ field }) => field)] },
  { kind: 'text', text: timedBucketWords(kept) },
];
