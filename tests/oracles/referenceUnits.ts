import { createUnit, unit as reference } from 'mathjs';

// mathjs, a general units library, as an independent reference. Its gallons and ounces are the US ones. Its teaspoon
// and tablespoon are those of nutrition labels (5 and 15 mL), so ours are told by its fluid ounce. It has no imperial
// gallon, so it is told one: 4.54609 L, UK Units of Measurement Regulations.
createUnit('imperialgallon', '4.54609 l');

/** What mathjs calls our units, by token. */
export const REFERENCE_NAMES: Readonly<Record<string, { name: string; times: number }>> = {
  mL: { name: 'ml', times: 1 },
  L: { name: 'l', times: 1 },
  tsp: { name: 'fluidounce', times: 1 / 6 },
  tbsp: { name: 'fluidounce', times: 1 / 2 },
  'fl oz': { name: 'fluidounce', times: 1 },
  cup: { name: 'cup', times: 1 },
  pt: { name: 'pint', times: 1 },
  qt: { name: 'quart', times: 1 },
  gal: { name: 'gallon', times: 1 },
  'imp fl oz': { name: 'imperialgallon', times: 1 / 160 },
  'imp pt': { name: 'imperialgallon', times: 1 / 8 },
  'imp qt': { name: 'imperialgallon', times: 1 / 4 },
  'imp gal': { name: 'imperialgallon', times: 1 },
  m3: { name: 'm3', times: 1 },
  ft3: { name: 'cuft', times: 1 },
  mg: { name: 'mg', times: 1 },
  g: { name: 'g', times: 1 },
  kg: { name: 'kg', times: 1 },
  oz: { name: 'oz', times: 1 },
  lb: { name: 'lbm', times: 1 },
  'L/min': { name: 'l/minute', times: 1 },
  'L/h': { name: 'l/hour', times: 1 },
  'mL/s': { name: 'ml/s', times: 1 },
  'gal/min': { name: 'gallon/minute', times: 1 },
  'gal/h': { name: 'gallon/hour', times: 1 },
  'imp gal/min': { name: 'imperialgallon/minute', times: 1 },
  mm: { name: 'mm', times: 1 },
  cm: { name: 'cm', times: 1 },
  m: { name: 'm', times: 1 },
  in: { name: 'inch', times: 1 },
  ft: { name: 'ft', times: 1 },
  yd: { name: 'yd', times: 1 },
  C: { name: 'degC', times: 1 },
  F: { name: 'degF', times: 1 },
};

/** A value in another unit of its family, as mathjs has it. */
export const referenceConvert = (value: number, from: string, to: string): number => {
  const [given, wanted] = [REFERENCE_NAMES[from]!, REFERENCE_NAMES[to]!];
  return reference(value * given.times, given.name).toNumber(wanted.name) / wanted.times;
};
