import { fromRate, labelShare as shareOfLabel, toRate } from '../../addin/core';
import { defineFunction } from '../defineFunction';
import { number, rateUnit } from '../parameters';
import { densityMissing } from '../sentences';
import { measured, show } from '../telling';
import { density } from './density';
import { rateSteps } from './inUnits';

export const labelShare = defineFunction({
  name: 'LABELSHARE',
  summary: "A rate as a share of a label's greatest rate",
  parameters: {
    rate: number('Rate that is asked about', { atLeast: 0 }),
    rate_unit: rateUnit('Unit of the rate'),
    greatest: number("The label's greatest rate", { above: 0 }),
    greatest_unit: rateUnit("Unit of the label's rate"),
    density,
  },
  result: { kind: 'number', description: "1 at the label's greatest rate, more than 1 above it" },
  errors: ['#VALUE! where one rate is by volume and the other by mass, and no density is given'],
  examples: [
    { args: [1, 'tbsp/gal', 2, 'tbsp/gal'], answer: 0.5 },
    { args: [1, 'tbsp/gal', 3.90625, 'mL/L'], answer: 1 },
    { args: [3, 'g/L', 2, 'mL/L', 1.2], answer: 1.25 },
  ],
  source: 'Definition: rate ÷ greatest rate; a share within a billionth of 1 is 1',
  compute: (v) =>
    shareOfLabel(toRate(v.rate, v.rate_unit), toRate(v.greatest, v.greatest_unit), v.density) ??
    densityMissing(v.rate_unit.amount.token, v.greatest_unit.amount.token),
  working: (v, answer) => {
    const inTheirs = fromRate(toRate(v.rate, v.rate_unit), v.greatest_unit, v.density)!;
    const same = v.rate_unit.token === v.greatest_unit.token;
    const greatest = measured(v.greatest, v.greatest_unit);
    return [
      ...(same ? [] : rateSteps(v.rate, v.rate_unit, v.greatest_unit, v.density)),
      `${measured(inTheirs, v.greatest_unit)} ÷ ${greatest} = ${show(answer)}`,
    ];
  },
});
