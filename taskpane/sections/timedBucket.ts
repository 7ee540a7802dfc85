import { findUnit, litres, meanFlow, repeatsNeeded, seconds, spread, toCanonical } from '../../addin/core';
import type { LitresPerMinute } from '../../addin/core';
import type { Garden } from '../../addin/workbook/garden';
import { askNumber, unitBeside, type Asked } from '../asked';
import { inUnitWords, percentWords, plural } from '../quantityWords';
import type { PaneState } from '../state';
import { unitChoices } from '../unitChoices';
import type { Block } from '../view';

/** The share of the mean that repeats are asked to keep within. */
const WITHIN = 0.05;
/** At least three runs: published practice (NC State, WQWM-152). */
const FEWEST = 3;
const MOST = 200;

/** What the timed buckets come to as they stand in the pane. */
export interface TimedBucketAnswers {
  readonly bucket: Asked<number>;
  readonly bucketUnit: string;
  readonly times: readonly Asked<number>[];
  /** Seconds that were given, blank ones left out. */
  readonly seconds: readonly number[];
  /** Undefined while the bucket or every time is missing or wrong. */
  readonly flow?: LitresPerMinute;
}

const timeId = (index: number): string => `rig.time.${index + 1}`;

/** One empty time more than there are, so that the next repeat has a place to be typed. */
const timeFields = (state: PaneState, known: readonly number[]): Asked<number>[] => {
  const asked: Asked<number>[] = [];
  for (let index = 0; index < MOST; index += 1) {
    const time = askNumber(state, {
      section: 'rig',
      id: timeId(index),
      label: `Time ${index + 1}`,
      known: known[index],
      unit: 's',
      above: true,
      most: 3600,
    });
    asked.push(time);
    const later = index + 1 < known.length || state.typed[timeId(index + 1)] !== undefined;
    if (time.field.value.trim() === '' && !later && asked.length >= FEWEST) break;
  }
  return asked;
};

export const askTimedBuckets = (state: PaneState, { settings, timedBuckets }: Garden): TimedBucketAnswers => {
  const bucket = askNumber(state, {
    section: 'rig',
    id: 'rig.bucket',
    label: 'The bucket holds',
    known: timedBuckets.bucket.value,
    unit: { known: timedBuckets.bucket.unit, choices: unitChoices(settings.measures, 'bucket') },
    above: true,
  });
  const times = timeFields(state, timedBuckets.seconds);
  const given = times.flatMap(({ value }) => (value === undefined ? [] : [value]));
  const bucketUnit = unitBeside(bucket);
  const unit = findUnit(bucketUnit);
  const known = bucket.value !== undefined && unit !== undefined && given.length > 0;
  return {
    bucket,
    bucketUnit,
    times,
    seconds: given,
    ...(known ? { flow: meanFlow(litres(toCanonical(bucket.value, unit)), given.map(seconds)) } : {}),
  };
};

/** Mean, spread and repeats needed, in one sentence each. */
export const timedBucketWords = ({ flow, seconds: given }: TimedBucketAnswers, flowUnit: string): string => {
  if (flow === undefined) return 'Type how many seconds each bucket took.';
  const mean = `Mean flow ${inUnitWords(flow, flowUnit)}`;
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

export const timedBucketBlocks = (answers: TimedBucketAnswers, flowUnit: string): Block[] => [
  { kind: 'heading', text: 'Timed bucket' },
  {
    kind: 'text',
    tone: 'quiet',
    text: 'Fill a bucket through the wand, the hose laid as you use it and the barrel half full. Time it at least three times.',
  },
  { kind: 'fields', fields: [answers.bucket.field, ...answers.times.map(({ field }) => field)] },
  { kind: 'text', text: timedBucketWords(answers, flowUnit) },
];
