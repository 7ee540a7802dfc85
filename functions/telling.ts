import type { RateUnit, Unit } from '../addin/core';
import { convert, findUnit } from '../addin/core';
import type { Step } from './definition';

/** Where the measures are defined. */
export const MEASURES = 'NIST Handbook 44, Appendix C';
const IMPERIAL_MEASURES = 'UK Units of Measurement Regulations';

const DIGITS = 6;
const WHOLE_FROM = 10 ** (DIGITS - 1);
const POWERS_FROM = 1e15;

/** A number for reading, to six figures. */
export const show = (n: number): string => {
  const size = Math.abs(n);
  if (size >= WHOLE_FROM && size < POWERS_FROM) return String(Math.round(n));
  return String(Number(n.toPrecision(DIGITS)));
};

/** A number with its unit: "3.75 cups". */
export const measured = (n: number, unit: Unit | RateUnit): string =>
  `${show(n)} ${unit.token === 'cup' && n !== 1 ? 'cups' : unit.token}`;

const sourceOf = (from: Unit, to: Unit): string | undefined => {
  if (from.system === 'imperial' || to.system === 'imperial') return IMPERIAL_MEASURES;
  return from.system === 'metric' && to.system === 'metric' ? undefined : MEASURES;
};

const equal = (value: number, from: Unit, to: Unit): Step[] => {
  if (from.token === to.token) return [];
  const source = sourceOf(from, to);
  const text = `${measured(value, from)} = ${measured(convert(value, from, to), to)}`;
  return [source === undefined ? { text } : { text, source }];
};

const MILLILITRE = findUnit('mL')!;
const GRAM = findUnit('g')!;

/**
 * The steps from one unit to another; none where they are one.
 *
 * @param density g/mL, known where the units go between volume and mass
 */
export const changed = (value: number, from: Unit, to: Unit, density?: number): Step[] => {
  if (from.family === to.family) return equal(value, from, to);
  const weight = density!;
  if (from.family === 'volume') {
    const volume = convert(value, from, MILLILITRE);
    const mass = volume * weight;
    return [
      ...equal(value, from, MILLILITRE),
      { text: `${show(volume)} mL × ${show(weight)} g/mL = ${show(mass)} g` },
      ...equal(mass, GRAM, to),
    ];
  }
  const mass = convert(value, from, GRAM);
  const volume = mass / weight;
  return [
    ...equal(value, from, GRAM),
    { text: `${show(mass)} g ÷ ${show(weight)} g/mL = ${show(volume)} mL` },
    ...equal(volume, MILLILITRE, to),
  ];
};

const LITRE = findUnit('L')!;
const LITRE_PER_MINUTE = findUnit('L/min')!;

/** Whether a flow counts a volume's own unit by the minute, as gal/min does gal. */
export const countsPerMinute = (flowUnit: Unit, volumeUnit: Unit): boolean =>
  findUnit(`${volumeUnit.token}/min`)?.token === flowUnit.token;

/** A volume and a flow told in one measure, so that they divide at sight. */
export const inOneMeasure = (volume: number, volumeUnit: Unit, flow: number, flowUnit: Unit) => {
  const alike = countsPerMinute(flowUnit, volumeUnit);
  const measure = alike ? volumeUnit : LITRE;
  const rate = alike ? flowUnit : LITRE_PER_MINUTE;
  return {
    measure,
    rate,
    volumeSteps: changed(volume, volumeUnit, measure),
    flowSteps: changed(flow, flowUnit, rate),
    volume: measured(convert(volume, volumeUnit, measure), measure),
    flow: measured(convert(flow, flowUnit, rate), rate),
  };
};
