import { findUnit, fromCanonical, grams, litres, seconds, toCanonical } from '../../addin/core';
import type { Grams, Litres, Tank, TankLimits } from '../../addin/core';
import { rangeBeside } from '../../addin/workbook/fields/holds';
import { unitChoices } from '../../addin/workbook/fields/usualUnits';
import type { Garden } from '../../addin/workbook/garden';
import { rigForm } from '../../addin/workbook/sheets/rig';
import { askChoice, askNumber, firstFault, type Asked } from '../asked';
import type { PaneState } from '../state';

const MOST_TANKS = 8;
const MINUTE = 60;

/** Barrels that are sold, brim volumes, to begin with. Common practice, no source. */
const BEGIN: Readonly<Record<'gal' | 'L', readonly number[]>> = {
  gal: [30, 45, 60, 100],
  L: [100, 150, 200, 400],
};

export interface TankAnswers {
  readonly unit: Asked<string>;
  readonly sizes: readonly Asked<number>[];
  readonly mostFills: Asked<number>;
  readonly mostWeight: Asked<number>;
  readonly weightUnit: string;
  readonly longest: Asked<number>;
}

/** The sizes to begin with: those that are sold, the user's own among them. */
const beginWith = ({ rig }: Garden, unit: string): number[] => {
  const own = rig.barrel.unit === unit ? rig.barrel.value : undefined;
  const sold = BEGIN[unit === 'gal' ? 'gal' : 'L'];
  return [...new Set([...sold, ...(own === undefined ? [] : [own])])].sort((a, b) => a - b);
};

export const askTanks = (state: PaneState, garden: Garden): TankAnswers => {
  const { measures } = garden.settings;
  const number = (id: string, label: string, more: Partial<Parameters<typeof askNumber>[1]> = {}) =>
    askNumber(state, { section: 'tanks', id: `tanks.${id}`, label, range: { above: 0 }, ...more });
  const unit = askChoice(state, {
    section: 'tanks',
    id: 'tanks.unit',
    label: 'Sizes are in',
    known: garden.rig.barrel.unit || (unitChoices(measures, 'barrel')[0] ?? 'L'),
    choices: unitChoices(measures, 'barrel'),
  });
  const begin = beginWith(garden, unit.value ?? '');
  const sizes: Asked<number>[] = [];
  for (let index = 0; index < MOST_TANKS; index += 1) {
    const size = number(`size.${index + 1}`, `Barrel ${index + 1}`, {
      known: begin[index],
      unit: unit.value,
      range: rangeBeside(rigForm.lines.barrel.holds, unit.value),
    });
    sizes.push(size);
    if (index >= begin.length && size.field.value.trim() === '') break;
  }
  const weightUnit = unitChoices(measures, 'weight')[0] ?? 'kg';
  return {
    unit,
    sizes,
    mostFills: number('mostFills', 'Fills, at most', { range: { above: 0, whole: true } }),
    mostWeight: number('mostWeight', 'Weight full, at most', { unit: weightUnit }),
    weightUnit,
    longest: number('longest', 'Round time, at most', { unit: 'min' }),
  };
};

/** What is compared; undefined while no size can be read. */
export const tanksAsked = (asked: TankAnswers): { tanks: Tank[]; limits: TankLimits } | undefined => {
  const unit = findUnit(asked.unit.value ?? '');
  const weightUnit = findUnit(asked.weightUnit);
  const sizes = asked.sizes.flatMap(({ value }) => (value === undefined ? [] : [value]));
  if (unit === undefined || weightUnit === undefined || sizes.length === 0) return undefined;
  const { mostFills, mostWeight, longest } = asked;
  return {
    tanks: sizes.map((size) => ({ barrel: litres(toCanonical(size, unit)) })),
    limits: {
      ...(mostFills.value === undefined ? {} : { mostFills: mostFills.value }),
      ...(mostWeight.value === undefined
        ? {}
        : { mostWeight: grams(toCanonical(mostWeight.value, weightUnit)) }),
      ...(longest.value === undefined ? {} : { longestRound: seconds(longest.value * MINUTE) }),
    },
  };
};

/** Why the barrels cannot be compared as they stand; undefined where they can. */
export const tanksFault = (asked: TankAnswers): string | undefined =>
  firstFault([...asked.sizes, asked.mostFills, asked.mostWeight, asked.longest]) ??
  (tanksAsked(asked) === undefined ? 'Barrel 1: nothing was given; use a size to compare.' : undefined);

/** Sizes and limits in the rig's units, as the what-if sheet takes them. */
export const tanksToWrite = (garden: Garden, asked: TankAnswers) => {
  const { tanks, limits } = tanksAsked(asked) ?? { tanks: [], limits: {} };
  const inUnit = (value: Litres | Grams, token: string): number => {
    const unit = findUnit(token);
    return unit === undefined ? value : Number(fromCanonical(value, unit).toPrecision(12));
  };
  return {
    barrels: tanks.map(({ barrel }) => inUnit(barrel, garden.rig.barrel.unit)),
    limits: {
      ...(limits.mostFills === undefined ? {} : { fills: limits.mostFills }),
      ...(limits.mostWeight === undefined
        ? {}
        : { weight: inUnit(limits.mostWeight, garden.rig.emptyWeight.unit) }),
      ...(limits.longestRound === undefined ? {} : { minutes: limits.longestRound / MINUTE }),
    },
  };
};
