import { expect } from 'vitest';
import type { MixProduct, PlantGroup, Refusal, Rig, RoundInput, RoundPlan } from '../../../addin/core';
import {
  findRateUnit,
  findUnit,
  grams,
  litres,
  litresPerMinute,
  planRound,
  seconds,
  toCanonical,
  toRate,
} from '../../../addin/core';

// An invented garden in easy metric numbers.

export const gallons = (n: number) => litres(toCanonical(n, findUnit('gal')!));
export const gallonsPerMinute = (n: number) => litresPerMinute(toCanonical(n, findUnit('gal/min')!));
export const rate = (value: number, unit: string) => toRate(value, findRateUnit(unit)!);

export const group = (bed: string, station: string, sizeClass: string, plants: number): PlantGroup => ({
  bed,
  station,
  sizeClass,
  plants,
});

/** A barrel that delivers 100 L a fill, 10 L/min at the wand, 20 L/min at the tap. */
export const rig: Rig = {
  barrel: litres(102),
  fillLine: 1,
  heel: litres(2),
  flow: litresPerMinute(10),
  tapFlow: litresPerMinute(20),
  hoseContent: litres(0),
  betweenPlants: seconds(0),
  wandStaysOpen: false,
  countStep: seconds(1),
  emptyWeight: grams(9000),
  premixTime: seconds(300),
  moveTime: seconds(600),
};

export const powder: MixProduct = {
  name: 'Soluble powder 20-20-20',
  form: 'powder',
  rate: rate(1, 'g/L'),
  greatestRate: rate(1.5, 'g/L'),
  analysis: { N: 0.2, P2O5: 0.2, K2O: 0.2 },
  solubility: 250,
};

export const liquid: MixProduct = {
  name: 'Fish and kelp',
  form: 'liquid',
  rate: rate(4, 'mL/L'),
  greatestRate: rate(8, 'mL/L'),
  analysis: { N: 0.02, K2O: 0.01 },
};

/** 50 large plants of 4 L at one station, from 8 in the morning. */
export const round = (
  changes: Partial<RoundInput> & { readonly rigChanges?: Partial<Rig> } = {},
): RoundInput => {
  const { rigChanges, ...rest } = changes;
  return {
    groups: [group('Gate', 'Tap', 'large', 50)],
    doses: [
      { sizeClass: 'large', dose: litres(4) },
      { sizeClass: 'miniature', dose: litres(1) },
    ],
    rig: { ...rig, ...rigChanges },
    mix: [powder],
    style: 'full',
    start: seconds(8 * 3600),
    ...rest,
  };
};

export const planned = (input: RoundInput): RoundPlan => {
  const plan = planRound(input);
  if ('refused' in plan) throw new Error(plan.refused);
  return plan;
};

export const refusedBy = (input: RoundInput): Refusal => {
  const refusal = planRound(input);
  if (!('refused' in refusal)) throw new Error('The round was planned.');
  return refusal;
};

export const fillsOf = (plan: RoundPlan) => plan.stations.flatMap(({ fills }) => fills);

export const sum = (numbers: readonly number[]) => numbers.reduce((total, n) => total + n, 0);

/** Fails unless two figures agree but for the noise of adding up. */
export const expectSame = (actual: number | undefined, wanted: number): void => {
  expect(actual).toBeTypeOf('number');
  expect(Math.abs(actual! - wanted)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(wanted)));
};
