import { convert, finestMeasure, LEAST_FINEST, measure, MOST_STEPS } from '../../addin/core';
import { defineFunction } from '../defineFunction';
import { number, optional, unit } from '../parameters';
import * as say from '../sentences';
import { changed, measured, show } from '../telling';

const NEAR_NOTHING = 5e-7;
// Far beyond any amount; above it a change of unit may leave what a number holds.
const LARGEST = 1e300;

const off = (error: number): string => {
  if (Math.abs(error) < NEAR_NOTHING) return 'exact';
  return `${show(Math.abs(error) * 100)} % ${error > 0 ? 'over' : 'under'}`;
};

export const kitchenMeasure = defineFunction({
  name: 'MEASURE',
  summary: 'An amount in the measures that people own, as words',
  parameters: {
    amount: number('Amount to measure out', { above: 0 }),
    unit: unit('Unit of the amount; US, imperial or metric measures follow it', 'volume', 'mass'),
    finest: optional(
      number('Smallest step, counted in tsp, imp fl oz, mL, oz or g', { above: 0 }),
      '1/4 tsp, 1/4 imp fl oz, 1 mL, 1/4 oz or 1 g',
      undefined,
    ),
  },
  result: {
    kind: 'text',
    description: 'Words such as "3 3/4 cups", largest measure first, rounded to the nearest step',
  },
  errors: ['#VALUE! for an amount under half of the finest measure'],
  examples: [
    { args: [3.75, 'cup'], answer: '3 3/4 cups' },
    { args: [18, 'tbsp'], answer: '1 cup 2 tbsp' },
    { args: [1250, 'mL'], answer: '1 L 250 mL' },
    { args: [18.25, 'oz'], answer: '1 lb 2 1/4 oz' },
    { args: [1234, 'g', 50], answer: '1 kg 250 g' },
  ],
  source: 'NIST Handbook 44, Appendix C; the choice of measures is common practice',
  compute: ({ amount, unit: from, finest }) => {
    const { step, unit: smallest } = finestMeasure(from);
    const most = Math.min((finest ?? step) * MOST_STEPS, LARGEST);
    const inSmallest = convert(amount, from, smallest);
    if (finest !== undefined && inSmallest <= LARGEST && !(finest >= LEAST_FINEST && inSmallest <= most)) {
      const least = Math.max(LEAST_FINEST, inSmallest / MOST_STEPS);
      return say.tooManySteps('finest', measured(finest, smallest), `${measured(least, smallest)} or more`);
    }
    if (!(inSmallest <= most)) {
      return say.tooManySteps('amount', measured(amount, from), `${measured(most, smallest)} at most`);
    }
    const told = measure(amount, from, finest);
    return told?.words ?? say.underFinest(measured(amount, from), measured((finest ?? step) / 2, smallest));
  },
  working: ({ amount, unit: from, finest }, words) => {
    const { step, unit: smallest } = finestMeasure(from);
    const told = measure(amount, from, finest)!;
    const rounded = convert(told.measured, from, smallest);
    return [
      ...changed(amount, from, smallest),
      `to the nearest ${measured(finest ?? step, smallest)}: ${measured(rounded, smallest)}, ${off(told.error)}`,
      `${measured(rounded, smallest)} = ${words}`,
    ];
  },
});
