import { convert, finestMeasure, measurable as nearest, MOST_STEPS, toldIn } from '../../addin/core';
import { defineFunction } from '../defineFunction';
import { number, optional, unit } from '../parameters';
import * as say from '../sentences';
import { changed, measured, show } from '../telling';

export const measurable = defineFunction({
  name: 'MEASURABLE',
  summary: 'The nearest amount that at most two measures hold which people own',
  parameters: {
    amount: number('Amount to measure out', { atLeast: 0 }),
    unit: unit('Unit of the amount; US, imperial or metric measures follow it', 'volume', 'mass'),
    most: optional(
      number("What must not be passed, such as what a label's greatest rate comes to, in unit", { above: 0 }),
      'no limit',
      Infinity,
    ),
  },
  result: {
    kind: 'number',
    description: 'Amount, in unit; three measures only where two would be off by more than 2 %',
  },
  errors: ['#VALUE! for an amount under half of the finest measure, and where no measure is within most'],
  examples: [
    { args: [3.43, 'cup'], answer: 3.4375 },
    { args: [3.76, 'cup', 3.75], answer: 3.75 },
    { args: [1234, 'mL'], answer: 1230 },
    { args: [0, 'tsp'], answer: 0 },
  ],
  source: 'NIST Handbook 44, Appendix C; the choice of measures and steps is common practice',
  mayBeZero: () => false,
  compute: ({ amount, unit: from, most }) => {
    if (amount === 0) return 0;
    const { step, unit: smallest } = finestMeasure(from);
    const greatest = convert(step * MOST_STEPS, smallest, from);
    if (!(amount <= greatest)) {
      return say.tooManySteps('amount', measured(amount, from), `${measured(greatest, from)} at most`);
    }
    const found = nearest(amount, from, most);
    if (found !== undefined) return found.measured;
    const least = convert(step, smallest, from);
    return most < least
      ? say.notMeasurable('most', measured(most, from), `${measured(least, from)} or more`)
      : say.underFinest(measured(amount, from), measured(step / 2, smallest));
  },
  working: ({ amount, unit: from, most }, answer) => {
    if (amount === 0) return ['nothing to measure: 0'];
    const { unit: smallest } = finestMeasure(from);
    const exact = convert(answer, from, smallest);
    const limit = most === Infinity ? '' : `, ${measured(most, from)} at most`;
    return [
      `${measured(amount, from)}${limit}, in measures that people own: ${toldIn(exact, from).join(' ')}`,
      ...changed(exact, smallest, from),
      `${show((answer / amount - 1) * 100)} % off: ${measured(answer, from)}`,
    ];
  },
});
