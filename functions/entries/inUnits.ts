import type { Density, RateUnit, Unit } from '../../addin/core';
import { amountIn, convert, fromRate, toAmount, toRate } from '../../addin/core';
import type { Refused, Step } from '../definition';
import { defineFunction } from '../defineFunction';
import { anyUnit, number } from '../parameters';
import * as say from '../sentences';
import { changed, measured, show } from '../telling';
import { density } from './density';

/** The coldest there is. */
const COLDEST: Readonly<Record<string, number>> = { C: -273.15, F: -459.67 };

const isRate = (unit: Unit | RateUnit): unit is RateUnit => 'per' in unit;

const isAmount = (unit: Unit): boolean => unit.family === 'volume' || unit.family === 'mass';

const partnersOf = (unit: Unit | RateUnit): string => {
  if (isRate(unit)) return 'another rate';
  return isAmount(unit) ? 'a volume or mass unit' : `a ${unit.family} unit`;
};

const converted = (value: number, from: Unit, to: Unit, weight: Density | undefined): number | Refused => {
  // The arithmetic passes the coldest by its last digit.
  if (from.family === to.family) return Math.max(convert(value, from, to), COLDEST[to.token] ?? 0);
  if (!isAmount(from) || !isAmount(to))
    return say.doesNotConvert('to_unit', to.token, from.token, partnersOf(from));
  return amountIn(toAmount(value, from), to, weight) ?? say.densityMissing(from.token, to.token);
};

/** Only a temperature may be below 0, and none below the coldest there is. */
const impossible = (value: number, from: Unit | RateUnit): Refused | undefined => {
  if (isRate(from) || from.family !== 'temperature') {
    return value >= 0 ? undefined : say.notAllowed('value', value, '0 or more');
  }
  const coldest = COLDEST[from.token]!;
  return value >= coldest ? undefined : say.coldestPassed(value, `${coldest} ${from.token}`);
};

/** The steps from one unit of rate to another. */
export const rateSteps = (
  value: number,
  from: RateUnit,
  to: RateUnit,
  weight: Density | undefined,
): Step[] => {
  const product = amountIn(toAmount(value, from.amount), to.amount, weight)!;
  const solution = convert(from.per, from.volume, to.volume);
  const times = to.per === 1 ? '' : ` × ${show(to.per)}`;
  const answer = measured((product / solution) * to.per, to);
  return [
    ...changed(value, from.amount, to.amount, weight),
    ...changed(from.per, from.volume, to.volume),
    { text: `${measured(product, to.amount)} ÷ ${measured(solution, to.volume)}${times} = ${answer}` },
  ];
};

export const inUnits = defineFunction({
  name: 'INUNITS',
  summary: 'The same amount, rate, flow, length or temperature in another unit',
  parameters: {
    value: number('What to convert; only a temperature may be below 0'),
    from_unit: anyUnit('Unit of the value'),
    to_unit: anyUnit('Unit wanted'),
    density,
  },
  result: { kind: 'number', description: 'The value, in to_unit' },
  errors: [
    '#VALUE! where the two units do not convert, such as gal and ft',
    '#VALUE! between a volume and a mass without a density',
    '#VALUE! for a value below 0 that is no temperature, and for a temperature below the coldest there is',
  ],
  examples: [
    { args: [1, 'gal', 'tbsp'], answer: 256 },
    { args: [1, 'imp gal', 'L'], answer: 4.54609 },
    { args: [1, 'tbsp/gal', 'mL/L'], answer: 3.90625 },
    { args: [90, 'F', 'C'], answer: 290 / 9 },
    { args: [1, 'cup', 'g', 0.8], answer: 189.2705892 },
  ],
  source: 'NIST Handbook 44, Appendix C; UK Units of Measurement Regulations',
  mayBeZero: ({ from_unit }) => !isRate(from_unit) && from_unit.family === 'temperature',
  compute: (v) => {
    const { value, from_unit: from, to_unit: to } = v;
    const refused = impossible(value, from);
    if (refused) return refused;
    if (isRate(from) && isRate(to)) {
      return (
        fromRate(toRate(value, from), to, v.density) ?? say.densityMissing(from.amount.token, to.amount.token)
      );
    }
    if (isRate(from) || isRate(to))
      return say.doesNotConvert('to_unit', to.token, from.token, partnersOf(from));
    return converted(value, from, to, v.density);
  },
  working: (v) => {
    const { value, from_unit: from, to_unit: to } = v;
    if (isRate(from) && isRate(to)) return rateSteps(value, from, to, v.density);
    if (isRate(from) || isRate(to)) return [];
    const steps = changed(value, from, to, v.density);
    return steps.length > 0 ? steps : [`${measured(value, from)}, as it was`];
  },
});
