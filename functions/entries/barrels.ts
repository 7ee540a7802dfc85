import {
  barrelVolume,
  filledWeight,
  findUnit,
  fromCanonical,
  grams,
  litres,
  toCanonical,
  waterMass,
} from '../../addin/core';
import { defineFunction } from '../defineFunction';
import { number, optional, unit } from '../parameters';
import { changed, measured, show } from '../telling';

const LITRE = findUnit('L')!;
const METRE = findUnit('m')!;
const GRAM = findUnit('g')!;
const CUBIC_METRE = findUnit('m3')!;

export const barrel = defineFunction({
  name: 'BARREL',
  summary: 'Liquid in a round barrel filled to a depth',
  parameters: {
    depth: number('Depth of the liquid', { atLeast: 0 }),
    width: number('Inside diameter at the bottom', { above: 0 }),
    length_unit: unit('Unit of depth and widths', 'length'),
    volume_unit: unit('Unit in which to tell the liquid', 'volume'),
    surface_width: optional(
      number("Inside diameter at the liquid's surface, where the barrel tapers", { above: 0 }),
      'the width at the bottom',
      undefined,
    ),
  },
  result: { kind: 'number', description: 'Liquid, in volume_unit' },
  examples: [
    { args: [33.5, 22.5, 'in', 'gal'], answer: 57.66174016176883 },
    { args: [26, 20, 'in', 'gal', 24], answer: 42.903366339933335 },
  ],
  source: 'Geometry: frustum of a cone, V = π h ÷ 12 × (D₁² + D₁ D₂ + D₂²)',
  compute: (v) =>
    fromCanonical(
      barrelVolume(
        toCanonical(v.depth, v.length_unit),
        toCanonical(v.width, v.length_unit),
        v.surface_width === undefined ? undefined : toCanonical(v.surface_width, v.length_unit),
      ),
      v.volume_unit,
    ),
  working: (v) => {
    const depth = toCanonical(v.depth, v.length_unit);
    const bottom = toCanonical(v.width, v.length_unit);
    const surface = toCanonical(v.surface_width ?? v.width, v.length_unit);
    const volume = fromCanonical(barrelVolume(depth, bottom, surface), CUBIC_METRE);
    const [d, b, s] = [show(depth), show(bottom), show(surface)];
    const formula =
      bottom === surface ? `π × ${b}² ÷ 4 × ${d}` : `π × ${d} ÷ 12 × (${b}² + ${b} × ${s} + ${s}²)`;
    return [
      ...changed(v.depth, v.length_unit, METRE),
      ...changed(v.width, v.length_unit, METRE),
      ...(v.surface_width === undefined ? [] : changed(v.surface_width, v.length_unit, METRE)),
      `${formula} = ${measured(volume, CUBIC_METRE)}`,
      ...changed(volume, CUBIC_METRE, v.volume_unit),
    ];
  },
});

export const weight = defineFunction({
  name: 'WEIGHT',
  summary: 'Weight of a filled barrel',
  parameters: {
    volume: number('Liquid in the barrel', { atLeast: 0 }),
    volume_unit: unit('Unit of the volume', 'volume'),
    weight_unit: unit('Unit of the weights', 'mass'),
    empty_weight: optional(
      number('Weight of the empty barrel with the pump in it, in weight_unit', { atLeast: 0 }),
      '0',
      0,
    ),
  },
  result: { kind: 'number', description: 'Weight, in weight_unit, the liquid taken as water at 20 °C' },
  examples: [
    { args: [100, 'L', 'kg', 8], answer: 107.82 },
    { args: [60, 'gal', 'lb'], answer: 499.8229634403419 },
  ],
  source: 'MWH, Water Treatment, 3rd ed. (2012), Appendix C: water at 20 °C is 998.2 kg/m³',
  compute: (v) =>
    fromCanonical(
      filledWeight(toCanonical(v.volume, v.volume_unit), toCanonical(v.empty_weight, v.weight_unit)),
      v.weight_unit,
    ),
  working: (v, answer) => {
    const volume = toCanonical(v.volume, v.volume_unit);
    const water = waterMass(volume);
    const filled = fromCanonical(grams(water), v.weight_unit);
    const sum = `${show(filled)} ${v.weight_unit.token} + ${show(v.empty_weight)} ${v.weight_unit.token}`;
    return [
      ...changed(v.volume, v.volume_unit, LITRE),
      `${show(volume)} L × ${show(waterMass(litres(1)))} g/L = ${show(water)} g`,
      ...changed(water, GRAM, v.weight_unit),
      ...(v.empty_weight === 0 ? [] : [`${sum} = ${measured(answer, v.weight_unit)}`]),
    ];
  },
});
