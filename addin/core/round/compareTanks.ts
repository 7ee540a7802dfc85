import { filledWeight } from '../barrels/weight';
import { litres, seconds } from '../measuring/quantity';
import type { Grams, Litres, Seconds } from '../measuring/quantity';
import { planRound } from './planRound';
import type { Refusal, RoundInput, RoundPlan } from './round';

/** A barrel to compare. What is left out is the rig's own. */
export interface Tank {
  /** Brim volume, L, > 0. */
  readonly barrel: Litres;
  readonly heel?: Litres;
  /** Barrel with the pump in it and nothing else, g, ≥ 0. */
  readonly emptyWeight?: Grams;
}

/** What the user wants of a barrel; a limit that is left out limits nothing. */
export interface TankLimits {
  readonly mostFills?: number;
  /** Of the barrel filled to its line, g. */
  readonly mostWeight?: Grams;
  /** Start to finish, s. */
  readonly longestRound?: Seconds;
}

export interface TankRow {
  readonly barrel: Litres;
  readonly fills: number;
  /** Made up in the round's last fill, L. */
  readonly lastFill: Litres;
  /** Barrel filled to its line, as water at 20 °C, g. */
  readonly weightFull: Grams;
  /** Measuring, dissolving and filling, all fills, s. */
  readonly mixingAndFilling: Seconds;
  readonly roundTime: Seconds;
  /** Of the barrel, from station to station. */
  readonly moves: number;
  readonly meetsLimits: boolean;
}

export interface TankComparison {
  /** In the order of the tanks; a refusal where the round cannot be planned with one. */
  readonly rows: readonly (TankRow | (Refusal & { readonly barrel: Litres }))[];
  /** Place in `rows` of the smallest barrel that meets the limits, the first of two alike; undefined where none does. */
  readonly smallest?: number;
}

const rowOf = (input: RoundInput, plan: RoundPlan, limits: TankLimits): TankRow => {
  const { barrel, fillLine, emptyWeight } = input.rig;
  const fills = plan.stations.flatMap((station) => station.fills);
  const weightFull = filledWeight(litres(barrel * fillLine), emptyWeight);
  const roundTime = plan.totals.duration;
  const mixingAndFilling = fills.reduce(
    (total, { premixStart, pumpStart }) => total + (pumpStart - premixStart),
    0,
  );
  return {
    barrel,
    fills: fills.length,
    lastFill: fills.at(-1)!.makeUp,
    weightFull,
    mixingAndFilling: seconds(mixingAndFilling),
    roundTime,
    moves: plan.stations.length - 1,
    meetsLimits:
      fills.length <= (limits.mostFills ?? Infinity) &&
      weightFull <= (limits.mostWeight ?? Infinity) &&
      roundTime <= (limits.longestRound ?? Infinity),
  };
};

/**
 * Barrels side by side for the same round, each planned by `planRound`.
 *
 * Definition: each row is read off its plan; a barrel meets the limits where none of them is passed.
 *
 * @param input the round; its rig's barrel is not used
 * @param tanks any number, any order
 * @example of 30, 60 and 100 gal with at most 4 fills, the 60 gal one may be the smallest that fits
 */
export const compareTanks = (
  input: RoundInput,
  tanks: readonly Tank[],
  limits: TankLimits = {},
): TankComparison => {
  const rows = tanks.map((tank): TankComparison['rows'][number] => {
    const tried = {
      ...input,
      rig: {
        ...input.rig,
        barrel: tank.barrel,
        heel: tank.heel ?? input.rig.heel,
        emptyWeight: tank.emptyWeight ?? input.rig.emptyWeight,
      },
    };
    const plan = planRound(tried);
    return 'refused' in plan ? { ...plan, barrel: tank.barrel } : rowOf(tried, plan, limits);
  });
  let smallest: number | undefined;
  rows.forEach((row, place) => {
    if ('refused' in row || !row.meetsLimits) return;
    if (smallest === undefined || row.barrel < rows[smallest]!.barrel) smallest = place;
  });
  return smallest === undefined ? { rows } : { rows, smallest };
};
