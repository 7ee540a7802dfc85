import {
  amountIn,
  convert,
  convertShare,
  findUnit,
  massForPpm,
  massOf,
  milligramsPerLitre,
  NUTRIENT_FORMS,
  ofMass,
  perPlant,
  ppmOf,
  toAmount,
  toCanonical,
} from '../../addin/core';
import { defineFunction } from '../defineFunction';
import { number, nutrientForm, unit } from '../parameters';
import { densityMissing, doesNotConvert } from '../sentences';
import { changed, measured, show } from '../telling';
import { density } from './density';

const LITRE = findUnit('L')!;
const GRAM = findUnit('g')!;
const PER_CENT = 100;

const PPM_SOURCE = 'Definition: 1 ppm of a dilute feed is 1 mg/L; product g/L = ppm ÷ (10 × per cent)';

export const forPpm = defineFunction({
  name: 'FORPPM',
  summary: 'Product for so many ppm of a nutrient',
  parameters: {
    ppm: number('Nutrient wanted in the finished solution, mg/L', { atLeast: 0 }),
    percent: number('Nutrient in the product by mass, as its label says', { above: 0, atMost: 100 }),
    volume: number('Finished solution', { atLeast: 0 }),
    volume_unit: unit('Unit of the volume', 'volume'),
    amount_unit: unit('Unit in which to measure the product', 'volume', 'mass'),
    density,
  },
  result: { kind: 'number', description: 'Product, in amount_unit' },
  errors: ['#VALUE! where amount_unit is a volume and no density is given'],
  examples: [
    { args: [200, 20, 100, 'L', 'g'], answer: 100 },
    { args: [200, 20, 100, 'gal', 'oz'], answer: 13.35264712323093 },
  ],
  source: PPM_SOURCE,
  compute: (v) =>
    amountIn(
      ofMass(
        massForPpm(milligramsPerLitre(v.ppm), v.percent / PER_CENT, toCanonical(v.volume, v.volume_unit)),
      ),
      v.amount_unit,
      v.density,
    ) ?? densityMissing('mass', v.amount_unit.token),
  working: (v) => {
    const volume = convert(v.volume, v.volume_unit, LITRE);
    const nutrient = (v.ppm * volume) / 1000;
    const product = nutrient / (v.percent / PER_CENT);
    return [
      ...changed(v.volume, v.volume_unit, LITRE),
      `${show(volume)} L × ${show(v.ppm)} mg/L ÷ 1000 mg/g = ${show(nutrient)} g of the nutrient`,
      `${show(nutrient)} g ÷ ${show(v.percent)} % = ${show(product)} g`,
      ...changed(product, GRAM, v.amount_unit, v.density),
    ];
  },
});

export const ppm = defineFunction({
  name: 'PPM',
  summary: 'Nutrient that an amount of product gives, in ppm',
  parameters: {
    amount: number('Product that goes in', { atLeast: 0 }),
    amount_unit: unit('Unit of the amount', 'volume', 'mass'),
    percent: number('Nutrient in the product by mass, as its label says', { atLeast: 0, atMost: 100 }),
    volume: number('Finished solution', { above: 0 }),
    volume_unit: unit('Unit of the volume', 'volume'),
    density,
  },
  result: { kind: 'number', description: 'Nutrient in the finished solution, mg/L' },
  errors: ['#VALUE! where amount_unit is a volume and no density is given'],
  examples: [
    { args: [100, 'g', 20, 100, 'L'], answer: 200 },
    { args: [1, 'oz', 15, 100, 'gal'], answer: 11.233727560959059 },
  ],
  source: PPM_SOURCE,
  compute: (v) => {
    const mass = massOf(toAmount(v.amount, v.amount_unit), v.density);
    if (mass === undefined) return densityMissing(v.amount_unit.token, 'mass');
    return ppmOf(mass, v.percent / PER_CENT, toCanonical(v.volume, v.volume_unit)) as number;
  },
  working: (v, answer) => {
    const mass = massOf(toAmount(v.amount, v.amount_unit), v.density)!;
    const nutrient = (mass * v.percent) / PER_CENT;
    const volume = convert(v.volume, v.volume_unit, LITRE);
    return [
      ...changed(v.amount, v.amount_unit, GRAM, v.density),
      ...changed(v.volume, v.volume_unit, LITRE),
      `${show(mass)} g × ${show(v.percent)} % = ${show(nutrient)} g of the nutrient`,
      `${show(nutrient)} g × 1000 mg/g ÷ ${show(volume)} L = ${show(answer)} mg/L`,
    ];
  },
});

export const element = defineFunction({
  name: 'ELEMENT',
  summary: "A label's oxide as element, or an element as oxide",
  parameters: {
    percent: number('Per cent by mass, as the label says', { atLeast: 0, atMost: 100 }),
    from: nutrientForm('What the per cent is of'),
    to: nutrientForm('What to tell it as'),
  },
  result: { kind: 'number', description: 'Per cent by mass' },
  errors: ['#VALUE! for two that are no oxide and its own element, such as P2O5 and K'],
  examples: [
    { args: [20, 'P2O5', 'P'], answer: 8.728536347253584 },
    { args: [49.8, 'K', 'K2O'], answer: 59.9890644861797 },
  ],
  source: 'Ratio of atomic weights; Virginia Tech, SPES-201NP, prints the factors to four figures',
  compute: (v) => {
    const partner = NUTRIENT_FORMS.find((form) => convertShare(1, v.from, form) !== undefined)!;
    return convertShare(v.percent, v.from, v.to) ?? doesNotConvert('to', v.to, v.from, partner);
  },
  working: (v, answer) => {
    const factor = convertShare(1, v.from, v.to)!;
    return [
      `1 % ${v.from} = ${show(factor)} % ${v.to}, by their atomic weights`,
      `${show(v.percent)} % × ${show(factor)} = ${show(answer)} %`,
    ];
  },
});

export const nutrientPerPlant = defineFunction({
  name: 'PERPLANT',
  summary: 'Nutrient that one plant gets',
  parameters: {
    ppm: number('Nutrient in the finished solution, mg/L', { atLeast: 0 }),
    dose: number('Finished solution for one plant', { atLeast: 0 }),
    dose_unit: unit('Unit of the dose', 'volume'),
  },
  result: { kind: 'number', description: 'Milligrams for one plant' },
  examples: [{ args: [200, 1, 'gal'], answer: 757.0823568 }],
  source: 'Definition: 1 ppm of a dilute feed is 1 mg/L',
  compute: (v) => perPlant(milligramsPerLitre(v.ppm), toCanonical(v.dose, v.dose_unit)),
  working: (v, answer) => {
    const dose = convert(v.dose, v.dose_unit, LITRE);
    return [
      ...changed(v.dose, v.dose_unit, LITRE),
      `${show(v.ppm)} mg/L × ${measured(dose, LITRE)} = ${show(answer)} mg`,
    ];
  },
});
