import {
  compareTanks,
  findUnit,
  fromCanonical,
  grams,
  litres,
  nameKey,
  seconds,
  toCanonical,
} from '../../../addin/core';
import type { Snapshot } from '../../../addin/workbook/port';
import { placesOf } from '../../../addin/workbook/tables/buildSheets';
import type { Plant } from '../../../addin/workbook/garden';
import { gardenSheets } from '../../../addin/workbook/sheets/gardenSheets';
import { areaNamed, cellAt, cellsOf } from '../../../addin/workbook/snapshot';
import { tankSheet } from '../../../addin/workbook/tanks/tankSheet';
import type { Change } from '../../../addin/workbook/change';
import { compare } from './compare';
import type { PlannedNow } from './planNow';

const TANKS = 'Wandcount_Tanks';
const SHARES = [0.4, 0.75, 1, 1.6];

/** What "Write the what-if sheet" makes of a garden that can be planned. */
export const tanksOf = (snapshot: Snapshot, { garden, planned }: PlannedNow): Change => {
  const { groups, rig, style } = planned!.input;
  const unit = findUnit(garden.rig.barrel.unit, 'volume')!;
  const stations = [...new Set(groups.map(({ station }) => station))];
  const own = new Map(garden.beds.map(({ bed, station }) => [nameKey(bed), station]));
  const inherited = groups.filter(({ bed }) => own.get(nameKey(bed)) === '');
  return tankSheet(
    snapshot,
    {
      stations: stations.length > 1 ? stations : [''],
      inherited: [...new Map(inherited.map(({ bed, station }) => [bed, { bed, station }])).values()],
      barrels: SHARES.map((share) => Number((fromCanonical(rig.barrel, unit) * share).toPrecision(4))),
      limits: { fills: 6, minutes: 300 },
      style,
      finding: '',
    },
    garden.settings.measures,
  );
};

/** Every number of the tank sheet that is not what the planner makes of the cells now. */
export const tanksDisagree = (snapshot: Snapshot, now: PlannedNow, made: PlannedNow): string[] => {
  const area = areaNamed(snapshot, TANKS);
  const { garden, planned, oddAnywhere } = now;
  if (!area || !planned || oddAnywhere || garden.problems.length > 0 || now.walk !== made.walk) return [];
  const check = compare();
  const rows = cellsOf(snapshot, area).map((line) => line.map(({ value, error }) => error ?? value));
  const head = rows.findIndex(([first]) => String(first).startsWith('Barrel, '));
  const barrels = rows.slice(head + 1).filter(([first]) => typeof first === 'number');
  check.number('barrels on the tank sheet', barrels.length, SHARES.length);
  const unit = findUnit(garden.rig.barrel.unit, 'volume')!;
  const weight = findUnit(garden.rig.emptyWeight.unit, 'mass')!;
  const input = { ...planned.input, style: rows[6]![1] === 'equal' ? ('equal' as const) : ('full' as const) };
  const answer = String(rows[1]![0]);
  const beds = new Set(garden.beds.map(({ bed }) => nameKey(bed)));
  const { sites } = placesOf(gardenSheets, snapshot)!;
  const site = sites['plants']!;
  const counted = ({ row, howMany }: Plant) =>
    howMany === 0 || cellAt(snapshot, site.sheet, row, site.columns['solution']!).formula !== undefined;
  // Beds that are not listed, and rows that were typed below and have no formulas before the next action.
  if (input.groups.some(({ bed }) => !beds.has(nameKey(bed))) || !garden.plants.every(counted)) {
    check.that(`plants are left out without a word: ${answer}`, answer.includes('not counted here yet'));
    return check.found;
  }
  const tanks = barrels.map(([size]) => ({ barrel: litres(toCanonical(size as number, unit)) }));
  const compared = compareTanks(input, tanks, { mostFills: 6, longestRound: seconds(300 * 60) });
  compared.rows.forEach((row, index) => {
    const [size, fills, last, full, mixing, round, moves, fits] = barrels[index]!;
    const of = (what: string) => `barrel of ${String(size)}, ${what}`;
    // The sheet tells more fills than a round may have, and a fill that is too small for one plant.
    if ('refused' in row) return;
    check.number(of('fills'), fills, row.fills);
    check.number(of('last fill'), last, fromCanonical(row.lastFill, unit));
    check.number(of('weight'), full, fromCanonical(grams(row.weightFull), weight));
    check.number(of('mixing'), mixing, row.mixingAndFilling / 60);
    check.number(of('round'), round, row.roundTime / 60);
    check.number(of('moves'), moves, row.moves);
    check.text(of('fits'), fits, row.meetsLimits ? 'yes' : 'no');
  });
  if (compared.rows.some((row) => 'refused' in row)) return check.found;
  const smallest = compared.smallest === undefined ? undefined : barrels[compared.smallest]![0];
  check.text(
    'answer of the tank sheet',
    answer,
    smallest === undefined
      ? 'None of these barrels keeps within your limits.'
      : `The smallest barrel within your limits holds ${String(smallest)} ${garden.rig.barrel.unit}.`,
  );
  return check.found;
};
