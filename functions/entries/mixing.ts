import {
  amountIn,
  concentrate,
  convert,
  fromCanonical,
  fromRate,
  productFor,
  strength,
  toAmount,
  toCanonical,
  toRate,
} from '../../addin/core';
import { defineFunction } from '../defineFunction';
import { choice, number, optional, rateUnit, unit } from '../parameters';
import { densityMissing } from '../sentences';
import { changed, measured, show } from '../telling';
import { density } from './density';

export const dilute = defineFunction({
  name: 'DILUTE',
  summary: 'Product for a volume of finished solution',
  parameters: {
    rate: number('Amount of product that the label asks for', { atLeast: 0 }),
    rate_unit: rateUnit('Unit of the rate, such as tbsp/gal'),
    volume: number('Finished solution, water and products together', { atLeast: 0 }),
    volume_unit: unit('Unit of the volume', 'volume'),
    amount_unit: unit('Unit in which to measure the product', 'volume', 'mass'),
    density,
  },
  result: { kind: 'number', description: 'Product, in amount_unit' },
  errors: ['#VALUE! where the rate and amount_unit are a volume and a mass and no density is given'],
  examples: [
    { args: [1, 'tbsp/gal', 60, 'gal', 'cup'], answer: 3.75 },
    { args: [8, 'oz/100 gal', 60, 'gal', 'oz'], answer: 4.8 },
    { args: [2, 'mL/L', 200, 'L', 'g', 1.2], answer: 480 },
  ],
  source: 'Definition: product = rate × finished solution',
  compute: (v) =>
    amountIn(
      productFor(toRate(v.rate, v.rate_unit), toCanonical(v.volume, v.volume_unit)),
      v.amount_unit,
      v.density,
    ) ?? densityMissing(v.rate_unit.amount.token, v.amount_unit.token),
  working: (v) => {
    const volume = convert(v.volume, v.volume_unit, v.rate_unit.volume);
    const product = (v.rate * volume) / v.rate_unit.per;
    return [
      ...changed(v.volume, v.volume_unit, v.rate_unit.volume),
      `${measured(volume, v.rate_unit.volume)} × ${measured(v.rate, v.rate_unit)} = ${measured(product, v.rate_unit.amount)}`,
      ...changed(product, v.rate_unit.amount, v.amount_unit, v.density),
    ];
  },
});

export const strengthOfMix = defineFunction({
  name: 'STRENGTH',
  summary: 'The rate that was mixed',
  parameters: {
    amount: number('Product that went in', { atLeast: 0 }),
    amount_unit: unit('Unit of the amount', 'volume', 'mass'),
    volume: number('Finished solution, water and products together', { above: 0 }),
    volume_unit: unit('Unit of the volume', 'volume'),
    rate_unit: rateUnit('Unit in which to tell the rate, such as tbsp/gal'),
    density,
  },
  result: { kind: 'number', description: 'Rate, in rate_unit' },
  errors: ['#VALUE! where amount_unit and the rate are a volume and a mass and no density is given'],
  examples: [
    { args: [3.75, 'cup', 60, 'gal', 'tbsp/gal'], answer: 1 },
    { args: [4.8, 'oz', 60, 'gal', 'oz/100 gal'], answer: 8 },
  ],
  source: 'Definition: rate = product ÷ finished solution',
  compute: (v) =>
    fromRate(
      strength(toAmount(v.amount, v.amount_unit), toCanonical(v.volume, v.volume_unit)),
      v.rate_unit,
      v.density,
    ) ?? densityMissing(v.amount_unit.token, v.rate_unit.amount.token),
  working: (v, rate) => {
    const { amount: unitOfAmount, volume: unitOfVolume, per } = v.rate_unit;
    const volume = convert(v.volume, v.volume_unit, unitOfVolume);
    const amount = (rate * volume) / per;
    const times = per === 1 ? '' : ` × ${show(per)}`;
    return [
      ...changed(v.amount, v.amount_unit, unitOfAmount, v.density),
      ...changed(v.volume, v.volume_unit, unitOfVolume),
      `${measured(amount, unitOfAmount)} ÷ ${measured(volume, unitOfVolume)}${times} = ${measured(rate, v.rate_unit)}`,
    ];
  },
});

export const stock = defineFunction({
  name: 'STOCK',
  summary: 'Concentrate for a proportioner to make a volume of finished solution',
  parameters: {
    parts: number('The mark on the proportioner: 100 for 1:100', { atLeast: 1 }),
    volume: number('Finished solution', { atLeast: 0 }),
    volume_unit: unit('Unit of the volume and of the result', 'volume'),
    convention: optional(
      choice(
        '"in": 1 part in so many of finished solution; "plus": 1 part and so many of water',
        'in',
        'plus',
      ),
      '"in"',
      'in',
    ),
  },
  result: { kind: 'number', description: 'Concentrate, in volume_unit' },
  examples: [
    { args: [100, 100, 'gal'], answer: 1 },
    { args: [15, 64, 'gal', 'plus'], answer: 4 },
  ],
  source:
    'UMass Extension, Fertilizer Calculations for Greenhouse Crops: 1 gal at 1:100 delivers 100 gal final',
  compute: (v) =>
    fromCanonical(concentrate(v.parts, toCanonical(v.volume, v.volume_unit), v.convention), v.volume_unit),
  working: (v, answer) => {
    const plus = v.convention === 'plus';
    const parts = show(v.parts);
    const total = plus ? `(${parts} + 1)` : parts;
    return [
      plus
        ? `1 part of concentrate and ${parts} of water make ${show(v.parts + 1)} parts of finished solution`
        : `1 part of concentrate in ${parts} parts of finished solution`,
      `${measured(v.volume, v.volume_unit)} ÷ ${total} = ${measured(answer, v.volume_unit)}`,
    ];
  },
});
