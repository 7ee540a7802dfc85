import type { HowMuch, Unit } from '../../addin/core';
import {
  convert,
  finestMeasure,
  howMuch as measureOf,
  measurable as nearest,
  MOST_STEPS,
  toldIn,
} from '../../addin/core';
import type { Refused, Step } from '../definition';
import { defineFunction } from '../defineFunction';
import { number, optional, unit } from '../parameters';
import * as say from '../sentences';
import { changed, measured, show } from '../telling';

const amountUnit = unit('Unit of the amount; US, imperial or metric measures follow it', 'volume', 'mass');
const most = optional(
  number("What must not be passed, such as what a label's greatest rate comes to, in unit", { above: 0 }),
  'no limit',
  Infinity,
);
const SOURCE = 'NIST Handbook 44, Appendix C; the choice of measures and steps is common practice';

interface Asked {
  readonly amount: number;
  readonly unit: Unit;
  readonly most: number;
}

const tooMuch = ({ amount, unit: from }: Asked): Refused | undefined => {
  const { step, unit: smallest } = finestMeasure(from);
  const greatest = convert(step * MOST_STEPS, smallest, from);
  if (amount <= greatest) return undefined;
  return say.tooManySteps('amount', measured(amount, from), `${measured(greatest, from)} at most`);
};

const asked = ({ amount, unit: from, most: limit }: Asked): string =>
  measured(amount, from) + (limit === Infinity ? '' : `, ${measured(limit, from)} at most`);

const inMeasures = (said: string, words: string): string => `${said}, in measures that people own: ${words}`;

const offBy = ({ amount, unit: from }: Asked, answer: number): string =>
  `${show((answer / amount - 1) * 100)} % off: ${measured(answer, from)}`;

/** How the part of a stock is found that takes the place of too little product. */
const stockSteps = (v: Asked, { words, stock }: HowMuch): (Step | string)[] => {
  if (!stock) return [`${asked(v)}: ${words}, also as part of a stock`];
  const { product, water, part } = stock;
  const wanted = Math.min(v.amount, v.most);
  const holds = measured(convert(water.amount, water.unit, part.unit), part.unit);
  const amount = measured(convert(wanted, v.unit, product.unit), product.unit);
  return [
    `${asked(v)}: too little to measure`,
    ...changed(wanted, v.unit, product.unit),
    ...changed(water.amount, water.unit, part.unit),
    `${amount} × ${holds} ÷ ${measured(product.amount, product.unit)} = ${measured(part.exact, part.unit)}`,
    inMeasures(measured(part.exact, part.unit), part.words),
  ];
};

export const measurable = defineFunction({
  name: 'MEASURABLE',
  summary: 'The nearest amount that at most two measures hold which people own',
  parameters: { amount: number('Amount to measure out', { atLeast: 0 }), unit: amountUnit, most },
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
  source: SOURCE,
  compute: (v) => {
    const { amount, unit: from } = v;
    if (amount === 0) return 0;
    const refused = tooMuch(v);
    if (refused) return refused;
    const found = nearest(amount, from, v.most);
    if (found !== undefined) return found.measured;
    const { step, unit: smallest } = finestMeasure(from);
    const least = convert(step, smallest, from);
    return v.most < least
      ? say.notMeasurable('most', measured(v.most, from), `${measured(least, from)} or more`)
      : say.underFinest(measured(amount, from), measured(step / 2, smallest));
  },
  working: (v, answer) => {
    if (v.amount === 0) return ['nothing to measure: 0'];
    const { unit: smallest } = finestMeasure(v.unit);
    const exact = convert(answer, v.unit, smallest);
    return [
      inMeasures(asked(v), toldIn(exact, v.unit).join(' ')),
      ...changed(exact, smallest, v.unit),
      offBy(v, answer),
    ];
  },
});

export const howMuch = defineFunction({
  name: 'HOWMUCH',
  summary: 'What a person measures for an amount of product, as words',
  parameters: { amount: number('Product wanted', { above: 0 }), unit: amountUnit, most },
  result: {
    kind: 'text',
    description:
      'Words such as "3 3/4 cups", as MEASURABLE finds them; for too little, a part of a stock: so much product in so ' +
      'much water, so much of that',
  },
  examples: [
    { args: [3.43, 'cup'], answer: '3 1/4 cups 3 tbsp' },
    { args: [3.76, 'cup', 3.75], answer: '3 3/4 cups' },
    { args: [0.0625, 'tsp'], answer: 'too little to measure: 1 tsp in 1 qt of water, 1/4 cup of that' },
    { args: [1e-6, 'tsp'], answer: 'too little to measure' },
  ],
  source: SOURCE,
  compute: (v) => tooMuch(v) ?? measureOf(v.amount, v.unit, v.most).words,
  working: (v, words) => {
    const found = measureOf(v.amount, v.unit, v.most);
    if (!found.tooLittle) return [inMeasures(asked(v), words)];
    return [...stockSteps(v, found), ...(found.stock ? [words] : [])];
  },
});

export const measuredOf = defineFunction({
  name: 'MEASURED',
  summary: 'The product that is really measured for an amount, by the words of HOWMUCH',
  parameters: { amount: number('Product wanted', { atLeast: 0 }), unit: amountUnit, most },
  result: {
    kind: 'number',
    description:
      'Product, in unit; of a part of a stock what is in that part; 0 where even a stock is too little to measure',
  },
  examples: [
    { args: [3.43, 'cup'], answer: 3.4375 },
    { args: [0.0626, 'tsp'], answer: 0.0625 },
    { args: [1e-6, 'tsp'], answer: 0 },
    { args: [0, 'tsp'], answer: 0 },
  ],
  source: SOURCE,
  mayBeZero: () => true,
  compute: (v) => (v.amount === 0 ? 0 : (tooMuch(v) ?? measureOf(v.amount, v.unit, v.most).measured)),
  working: (v, answer) => {
    if (v.amount === 0) return ['nothing to measure: 0'];
    const found = measureOf(v.amount, v.unit, v.most);
    const { stock } = found;
    if (!found.tooLittle) return [inMeasures(asked(v), found.words), offBy(v, answer)];
    if (!stock) return [...stockSteps(v, found), 'nothing is measured: 0'];
    const { product, water, part } = stock;
    const holds = measured(convert(water.amount, water.unit, part.unit), part.unit);
    const inPart = convert(answer, v.unit, product.unit);
    const one = measured(product.amount, product.unit);
    return [
      ...stockSteps(v, found),
      `${measured(part.measured, part.unit)} × ${one} ÷ ${holds} = ${measured(inPart, product.unit)}`,
      ...changed(inPart, product.unit, v.unit),
      offBy(v, answer),
    ];
  },
});
