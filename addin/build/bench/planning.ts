import { grams, litres, litresPerMinute, ofVolume, planRound, seconds } from '../../core';
import type { RoundInput } from '../../core';

const SIZES = ['Large bush', 'Bush', 'Small bush', 'Potted miniature'];

/** A round with one line a plant, so that planning sees as many lines as the garden has plants. */
const garden = (plants: number): RoundInput => ({
  groups: Array.from({ length: plants }, (_, index) => ({
    bed: `Bed ${Math.floor(index / 25)}`,
    station: `Station ${Math.floor(index / 500)}`,
    sizeClass: SIZES[index % SIZES.length]!,
    plants: 1,
  })),
  doses: SIZES.map((sizeClass, index) => ({ sizeClass, dose: litres(3 - index * 0.6) })),
  rig: {
    barrel: litres(Math.max(227, plants / 10)),
    fillLine: 1,
    heel: litres(6),
    flow: litresPerMinute(9.8),
    tapFlow: litresPerMinute(30),
    hoseContent: litres(5),
    betweenPlants: seconds(3),
    wandStaysOpen: false,
    countStep: seconds(1),
    emptyWeight: grams(12_000),
    premixTime: seconds(300),
    moveTime: seconds(300),
  },
  mix: [{ name: 'soluble powder', form: 'powder', rate: ofVolume(litres(0.0039)), analysis: { N: 0.2 } }],
  style: 'full',
  start: seconds(28_800),
});

const RUNS = 15;

export const run = (print: (line: string) => void): void => {
  for (const plants of [350, 5000, 50_000]) {
    const input = garden(plants);
    const times = Array.from({ length: RUNS }, () => {
      const from = performance.now();
      const plan = planRound(input);
      if ('refused' in plan) throw new Error(plan.refused);
      return performance.now() - from;
    }).sort((a, b) => a - b);
    print(
      `${plants.toLocaleString('en').padStart(7)} plants: median ${times[RUNS >> 1]!.toFixed(2)} ms, worst ${times.at(-1)!.toFixed(2)} ms`,
    );
  }
};
