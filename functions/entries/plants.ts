import {
  convert,
  countFor,
  doseFrom,
  fromCanonical,
  litres,
  need as needOf,
  seconds as ofSeconds,
  secondsFor,
  serves as servesOf,
  toCanonical,
} from '../../addin/core';
import { defineFunction } from '../defineFunction';
import { grid, number, optional, unit } from '../parameters';
import { lostInArithmetic, told, unlikeRanges } from '../sentences';
import { changed, inOneMeasure, measured, show } from '../telling';

/** Groups of plants that a working tells one by one. */
const TOLD = 8;

export const seconds = defineFunction({
  name: 'SECONDS',
  summary: 'Seconds to hold the wand on one plant',
  parameters: {
    dose: number('Finished solution for one plant', { above: 0 }),
    dose_unit: unit('Unit of the dose', 'volume'),
    flow: number('Flow at the wand', { above: 0 }),
    flow_unit: unit('Unit of the flow', 'flow'),
    step: optional(
      number('Count in whole multiples of so many seconds', { above: 0 }),
      'not rounded',
      undefined,
    ),
  },
  result: { kind: 'number', description: 'Seconds; with a step its nearest multiple, never 0' },
  examples: [
    { args: [0.7, 'gal', 2.8, 'gal/min'], answer: 15 },
    { args: [0.7, 'gal', 2.6, 'gal/min', 1], answer: 16 },
    { args: [100, 'mL', 10, 'L/min', 5], answer: 5 },
  ],
  source: 'Definition: time = volume ÷ flow',
  compute: (v) => {
    const dose = toCanonical(v.dose, v.dose_unit);
    const flow = toCanonical(v.flow, v.flow_unit);
    return v.step === undefined ? secondsFor(dose, flow) : countFor(dose, flow, ofSeconds(v.step));
  },
  working: (v, answer) => {
    const { volumeSteps, flowSteps, volume, flow } = inOneMeasure(v.dose, v.dose_unit, v.flow, v.flow_unit);
    const exact = secondsFor(toCanonical(v.dose, v.dose_unit), toCanonical(v.flow, v.flow_unit));
    const rounded = `to the nearest multiple of ${show(v.step ?? 0)} s, never 0: ${show(answer)} s`;
    return [
      ...volumeSteps,
      ...flowSteps,
      `${volume} ÷ ${flow} × 60 s/min = ${show(exact)} s`,
      ...(v.step === undefined ? [] : [rounded]),
    ];
  },
});

export const dose = defineFunction({
  name: 'DOSE',
  summary: 'Finished solution that a count gives to one plant',
  parameters: {
    seconds: number('Seconds the wand is held on the plant', { atLeast: 0 }),
    flow: number('Flow at the wand', { above: 0 }),
    flow_unit: unit('Unit of the flow', 'flow'),
    dose_unit: unit('Unit in which to tell the dose', 'volume'),
  },
  result: { kind: 'number', description: 'Dose, in dose_unit' },
  examples: [{ args: [15, 2.8, 'gal/min', 'gal'], answer: 0.7 }],
  source: 'Definition: volume = time × flow',
  compute: (v) =>
    fromCanonical(doseFrom(ofSeconds(v.seconds), toCanonical(v.flow, v.flow_unit)), v.dose_unit),
  working: (v, answer) => {
    const { flowSteps, measure, flow } = inOneMeasure(answer, v.dose_unit, v.flow, v.flow_unit);
    const given = doseFrom(ofSeconds(v.seconds), toCanonical(v.flow, v.flow_unit));
    const inMeasure = fromCanonical(given, measure);
    return [
      ...flowSteps,
      `${show(v.seconds)} s × ${flow} ÷ 60 s/min = ${measured(inMeasure, measure)}`,
      ...changed(inMeasure, measure, v.dose_unit),
    ];
  },
});

export const need = defineFunction({
  name: 'NEED',
  summary: 'Finished solution that groups of plants need together',
  parameters: {
    plants: grid('Plants in each group'),
    dose: grid('Dose for one plant of each group, a range of the same shape'),
    dose_unit: unit('Unit of the doses', 'volume'),
    volume_unit: unit('Unit in which to tell the need', 'volume'),
  },
  result: { kind: 'number', description: 'Σ plants × dose, in volume_unit' },
  errors: ['#VALUE! for two ranges that differ in shape'],
  examples: [
    { args: [[[120], [40]], [[1], [0.5]], 'gal', 'gal'], answer: 140 },
    { args: [[[10, 4]], [[4, '']], 'L', 'L'], answer: 40 },
  ],
  source: 'Definition: need = Σ plants × dose',
  compute: (v) => {
    const { plants, dose: doses } = v;
    const alike =
      plants.rows.length === doses.rows.length &&
      plants.rows.every((row, index) => row.length === doses.rows[index]!.length);
    if (!alike) return unlikeRanges('plants', plants.rows, 'dose', doses.rows);
    const inTheirUnit = needOf(plants.values, doses.values.map(litres));
    const total = convert(inTheirUnit, v.dose_unit, v.volume_unit);
    const lost = total === 0 && plants.values.some((count, index) => count > 0 && doses.values[index]! > 0);
    return lost ? lostInArithmetic('dose', told(doses.rows)) : total;
  },
  working: (v) => {
    const terms = v.plants.values.map((count, index) => [count, v.dose.values[index]!] as const);
    const total = terms.reduce((sum, [count, each]) => sum + count * each, 0);
    const growing = terms.filter(([count, each]) => count > 0 && each > 0);
    const listed = growing
      .map(([count, each]) => `${show(count)} × ${measured(each, v.dose_unit)}`)
      .join(' + ');
    const said =
      growing.length > 0 && growing.length <= TOLD ? listed : `Σ plants × dose over ${terms.length} groups`;
    return [`${said} = ${measured(total, v.dose_unit)}`, ...changed(total, v.dose_unit, v.volume_unit)];
  },
});

export const serves = defineFunction({
  name: 'SERVES',
  summary: 'Whole plants that a volume feeds',
  parameters: {
    volume: number('Finished solution', { atLeast: 0 }),
    volume_unit: unit('Unit of the volume', 'volume'),
    dose: number('Finished solution for one plant', { above: 0 }),
    dose_unit: unit('Unit of the dose', 'volume'),
  },
  result: { kind: 'number', description: 'Whole plants' },
  examples: [
    { args: [60, 'gal', 0.7, 'gal'], answer: 85 },
    { args: [1, 'gal', 1, 'cup'], answer: 16 },
  ],
  source: 'Definition: plants = volume ÷ dose, rounded down',
  mayBeZero: () => true,
  compute: (v) => servesOf(toCanonical(v.volume, v.volume_unit), toCanonical(v.dose, v.dose_unit)),
  working: (v, answer) => {
    const volume = convert(v.volume, v.volume_unit, v.dose_unit);
    const ratio = show(volume / v.dose);
    const down = ratio === show(answer) ? '' : `${ratio}, rounded down: `;
    return [
      ...changed(v.volume, v.volume_unit, v.dose_unit),
      `${measured(volume, v.dose_unit)} ÷ ${measured(v.dose, v.dose_unit)} = ${down}${show(answer)}`,
    ];
  },
});
