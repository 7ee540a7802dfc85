import { howLong as howLongWords, USUAL_STEP } from '../../addin/core';
import { defineFunction } from '../defineFunction';
import { number, optional } from '../parameters';
import { show } from '../telling';

const MINUTES_A_DAY = 1440;
/** A century: longer is no round. */
const LONGEST = 36_525 * MINUTES_A_DAY;

export const howLong = defineFunction({
  name: 'HOWLONG',
  summary: 'Minutes in words',
  parameters: {
    minutes: number('Time to tell', { atLeast: 0, atMost: LONGEST }),
    step: optional(
      number('To the nearest so many minutes', { above: 0, atMost: MINUTES_A_DAY }),
      String(USUAL_STEP),
      USUAL_STEP,
    ),
  },
  result: { kind: 'text', description: 'Words such as "3 h 15 min"; never "0 min" for more than none' },
  examples: [
    { args: [94], answer: '1 h 35 min' },
    { args: [25.2, 1], answer: '25 min' },
    { args: [180], answer: '3 h' },
    { args: [1], answer: '5 min' },
  ],
  source: 'Definition: 60 minutes to the hour',
  compute: (v) => howLongWords(v.minutes, v.step),
  working: (v, answer) => [`${show(v.minutes)} min, to the nearest ${show(v.step)} min: ${answer}`],
});
