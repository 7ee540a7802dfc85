import { findUnit, fromCanonical, leastWater, massOf, SATURATION_MARGIN, toAmount } from '../../addin/core';
import { defineFunction } from '../defineFunction';
import { number, optional, unit } from '../parameters';
import { densityMissing } from '../sentences';
import { changed, show } from '../telling';
import { density } from './density';

const LITRE = findUnit('L')!;
const GRAM = findUnit('g')!;

export const premix = defineFunction({
  name: 'PREMIX',
  summary: 'Least water that dissolves a powder in the bucket',
  parameters: {
    amount: number('Powder to dissolve', { atLeast: 0 }),
    amount_unit: unit('Unit of the amount', 'volume', 'mass'),
    solubility: number("Grams that dissolve in a litre of water at the bucket's temperature", { above: 0 }),
    volume_unit: unit('Unit in which to tell the water', 'volume'),
    margin: optional(
      number('Share of saturation to load the water to', { above: 0, atMost: 1 }),
      String(SATURATION_MARGIN),
      SATURATION_MARGIN,
    ),
    density,
  },
  result: { kind: 'number', description: 'Water, in volume_unit' },
  errors: ['#VALUE! where amount_unit is a volume and no density is given'],
  examples: [
    { args: [800, 'g', 200, 'L'], answer: 5 },
    { args: [800, 'g', 200, 'L', 1], answer: 4 },
  ],
  source: 'Definition: water = mass ÷ (solubility × margin); the margin of 0.8 is a choice of ours',
  compute: (v) => {
    const mass = massOf(toAmount(v.amount, v.amount_unit), v.density);
    if (mass === undefined) return densityMissing(v.amount_unit.token, 'mass');
    return fromCanonical(leastWater(mass, v.solubility, v.margin), v.volume_unit);
  },
  working: (v) => {
    const mass = massOf(toAmount(v.amount, v.amount_unit), v.density)!;
    const water = leastWater(mass, v.solubility, v.margin);
    return [
      ...changed(v.amount, v.amount_unit, GRAM, v.density),
      `${show(mass)} g ÷ (${show(v.solubility)} g/L × ${show(v.margin)}) = ${show(water)} L`,
      ...changed(water, LITRE, v.volume_unit),
    ];
  },
});
