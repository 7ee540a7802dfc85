import { amountIn, cost as costOf, toAmount, unitCost as unitCostOf } from '../../addin/core';
import { defineFunction } from '../defineFunction';
import { number, unit } from '../parameters';
import { densityMissing } from '../sentences';
import { changed, measured, show } from '../telling';
import { density } from './density';

const price = number('Price of the pack, in your currency', { atLeast: 0 });
const pack = number('What the pack holds', { above: 0 });
const pack_unit = unit('Unit of the pack', 'volume', 'mass');

export const unitCost = defineFunction({
  name: 'UNITCOST',
  summary: 'Price of one measure out of a pack',
  parameters: {
    price,
    pack,
    pack_unit,
    per_unit: unit('The measure to price', 'volume', 'mass'),
    density,
  },
  result: { kind: 'number', description: 'Price of one per_unit' },
  errors: ['#VALUE! where pack_unit and per_unit are a volume and a mass and no density is given'],
  examples: [
    { args: [48, 25, 'lb', 'lb'], answer: 1.92 },
    { args: [48, 25, 'lb', 'oz'], answer: 0.12 },
  ],
  source: 'Definition: price of the pack ÷ what it holds',
  compute: (v) =>
    unitCostOf(v.price, toAmount(v.pack, v.pack_unit), toAmount(1, v.per_unit), v.density) ??
    densityMissing(v.pack_unit.token, v.per_unit.token),
  working: (v, answer) => {
    const held = amountIn(toAmount(v.pack, v.pack_unit), v.per_unit, v.density)!;
    return [
      ...changed(v.pack, v.pack_unit, v.per_unit, v.density),
      `${show(v.price)} ÷ ${measured(held, v.per_unit)}; for each ${v.per_unit.token}: ${show(answer)}`,
    ];
  },
});

export const cost = defineFunction({
  name: 'COST',
  summary: 'Price of an amount out of a pack',
  parameters: {
    amount: number('Amount used', { atLeast: 0 }),
    amount_unit: unit('Unit of the amount', 'volume', 'mass'),
    price,
    pack,
    pack_unit,
    density,
  },
  result: { kind: 'number', description: 'Price of the amount' },
  errors: ['#VALUE! where amount_unit and pack_unit are a volume and a mass and no density is given'],
  examples: [
    { args: [8, 'oz', 48, 25, 'lb'], answer: 0.96 },
    { args: [3.75, 'cup', 30, 1, 'gal'], answer: 7.03125 },
  ],
  source: 'Definition: price of the pack × amount ÷ what the pack holds',
  compute: (v) =>
    costOf(toAmount(v.amount, v.amount_unit), v.price, toAmount(v.pack, v.pack_unit), v.density) ??
    densityMissing(v.amount_unit.token, v.pack_unit.token),
  working: (v, answer) => {
    const used = amountIn(toAmount(v.amount, v.amount_unit), v.pack_unit, v.density)!;
    return [
      ...changed(v.amount, v.amount_unit, v.pack_unit, v.density),
      `${show(v.price)} × ${measured(used, v.pack_unit)} ÷ ${measured(v.pack, v.pack_unit)} = ${show(answer)}`,
    ];
  },
});
