import type { Seconds } from '../../addin/core';
import {
  convert,
  fromCanonical,
  meanFlow,
  repeatsNeeded,
  spread,
  studentT,
  toCanonical,
} from '../../addin/core';
import { defineFunction } from '../defineFunction';
import { number, readings, unit } from '../parameters';
import { tooFewReadings, tooManyRepeats } from '../sentences';
import { changed, inOneMeasure, measured, show } from '../telling';

const CONFIDENCE = 0.95;
const PER_CENT = 100;
/** As the contract has it: the most timed buckets that are worth asking for. */
const MOST_REPEATS = 200;
/** Readings that a working tells one by one. */
const TOLD = 12;

const seconds = readings('Seconds that each timed bucket of the same volume took');

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

const told = (values: readonly Seconds[]): string =>
  values.length <= TOLD ? values.map(show).join(' + ') : `the sum of ${values.length} readings`;

const spreadSteps = (values: readonly Seconds[], variation: number): string[] => {
  const mean = sum(values) / values.length;
  return [
    `mean of ${values.length} readings: (${told(values)}) ÷ ${values.length} = ${show(mean)} s`,
    `sample standard deviation: ${show(variation * mean)} s`,
    `${show(variation * mean)} s ÷ ${show(mean)} s × 100 % = ${show(variation * PER_CENT)} %`,
  ];
};

export const flow = defineFunction({
  name: 'FLOW',
  summary: 'Flow at the wand from timed buckets',
  parameters: {
    volume: number('What the bucket holds to its mark', { above: 0 }),
    volume_unit: unit('Unit of the volume', 'volume'),
    seconds,
    flow_unit: unit('Unit in which to tell the flow', 'flow'),
  },
  result: { kind: 'number', description: 'Flow, in flow_unit' },
  errors: ['#N/A where no reading is left'],
  examples: [
    { args: [2, 'gal', [[24.1], [24.6], [23.9]], 'gal/min'], answer: 4.958677685950413 },
    { args: [10, 'L', 30, 'L/min'], answer: 20 },
  ],
  source: 'Definition: flow = volume × readings ÷ sum of the seconds',
  compute: (v) => {
    if (v.seconds.length === 0) return tooFewReadings('seconds', 0, 'one timed bucket or more');
    return fromCanonical(meanFlow(toCanonical(v.volume, v.volume_unit), v.seconds), v.flow_unit);
  },
  working: (v, answer) => {
    const count = v.seconds.length;
    const total = show(sum(v.seconds));
    const { volume, volumeSteps, rate } = inOneMeasure(v.volume, v.volume_unit, answer, v.flow_unit);
    const perMinute = convert(answer, v.flow_unit, rate);
    const times = count === 1 ? '' : ` × ${count}`;
    return [
      ...(count === 1 ? [] : [`${told(v.seconds)} = ${total} s for ${count} buckets`]),
      ...volumeSteps,
      `${volume}${times} ÷ ${total} s × 60 s/min = ${measured(perMinute, rate)}`,
      ...changed(perMinute, rate, v.flow_unit),
    ];
  },
});

export const flowSpread = defineFunction({
  name: 'FLOWSPREAD',
  summary: 'How far timed buckets differ from each other',
  parameters: { seconds },
  result: { kind: 'number', description: 'Coefficient of variation of the seconds, per cent' },
  errors: ['#N/A for fewer than two readings'],
  examples: [{ args: [[[24.1], [24.6], [23.9]]], answer: 1.4898972212661163 }],
  source: 'Definition: sample standard deviation (n − 1) ÷ mean × 100',
  compute: (v) => {
    const variation = spread(v.seconds);
    if (variation === undefined)
      return tooFewReadings('seconds', v.seconds.length, 'two timed buckets or more');
    return variation * PER_CENT;
  },
  working: (v, answer) => spreadSteps(v.seconds, answer / PER_CENT),
});

export const repeats = defineFunction({
  name: 'REPEATS',
  summary: 'Timed buckets that bring the mean flow within a per cent, with 95 % confidence',
  parameters: {
    seconds,
    percent: number('How near the mean must be, plus or minus', { above: 0 }),
  },
  result: { kind: 'number', description: `Timed buckets in all, 3 to ${MOST_REPEATS}` },
  errors: ['#N/A for fewer than two readings', `#N/A where ${MOST_REPEATS} are not enough`],
  examples: [{ args: [[[24.1], [24.6], [23.9]], 2], answer: 5 }],
  source: 'IUPAC Gold Book, C01247: confidence limit of a mean, t(0.975, n − 1) × s ÷ √n',
  compute: (v) => {
    const variation = spread(v.seconds);
    if (variation === undefined)
      return tooFewReadings('seconds', v.seconds.length, 'two timed buckets or more');
    // Readings too far apart for arithmetic: refused as every result beyond it is.
    if (!Number.isFinite(variation)) return variation;
    const found = repeatsNeeded(v.seconds, v.percent / PER_CENT);
    return found ?? tooManyRepeats(v.percent, `${show(variation * PER_CENT)} %`, MOST_REPEATS);
  },
  working: (v, answer) => {
    const variation = spread(v.seconds)!;
    const t = studentT(CONFIDENCE, answer - 1);
    const within = ((t * variation) / Math.sqrt(answer)) * PER_CENT;
    const formula = `${show(t)} × ${show(variation * PER_CENT)} % ÷ √${answer}`;
    return [
      ...spreadSteps(v.seconds, variation),
      { text: `t(0.975, ${answer - 1}) × spread ÷ √${answer} = ${formula} = ${show(within)} %` },
      `that is at most ${show(v.percent)} %, and no smaller number from 3 up is: ${answer}`,
    ];
  },
});
