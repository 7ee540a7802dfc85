import { findRateUnit, findUnit, nameKey, overLabel, planRound } from '../../../addin/core';
import type { RoundInput, RoundPlan } from '../../../addin/core';
import { CARD_CELLS, LATER_CELLS } from '../../../addin/workbook/card/cardNames';
import type { Garden } from '../../../addin/workbook/garden';
import type { Snapshot } from '../../../addin/workbook/port';
import { readGarden } from '../../../addin/workbook/readGarden';
import { roundInput } from '../../../addin/workbook/roundInput';
import { unitKind } from '../../../addin/workbook/fields/usualUnits';
import { gardenSheets } from '../../../addin/workbook/sheets/gardenSheets';
import { rigForm } from '../../../addin/workbook/sheets/rig';
import { areaNamed, cellAt } from '../../../addin/workbook/snapshot';
import { placesOf } from '../../../addin/workbook/tables/buildSheets';
import { unitName, type Line } from '../../../addin/workbook/tables/form';

/** What the planner makes of the cells as they stand, with what stands beside the card. */
export interface PlannedNow {
  readonly garden: Garden;
  readonly reason: string;
  readonly planned?: { readonly input: RoundInput; readonly plan: RoundPlan };
  /** What of the sheets a card cannot follow once it has changed, as text. */
  readonly walk: string;
  readonly plants: string;
  /** True where the list of plants has names that formulas take for others. */
  readonly odd: boolean;
  /** The same of beds, stations and sizes as well. */
  readonly oddAnywhere: boolean;
  /** True where a line of the rig has a unit of another kind; the planner needs none beside a blank line. */
  readonly oddUnit: boolean;
}

const columnText = (snapshot: Snapshot, table: string, keys: readonly string[]): string[][] => {
  const site = placesOf(gardenSheets, snapshot)?.sites[table];
  if (!site) throw new Error(`The sheet ${table} is not whole.`);
  return site.rows.map((row) =>
    keys.map((key) => String(cellAt(snapshot, site.sheet, row, site.columns[key]!).value ?? '')),
  );
};

const hasOddUnit = (snapshot: Snapshot): boolean =>
  Object.values<Line>(rigForm.lines).some((line) => {
    if (line.holds?.kind !== 'measure') return false;
    const { sheet, row, column } = areaNamed(snapshot, unitName(line)!)!;
    const unit = cellAt(snapshot, sheet, row, column).value;
    return findUnit(String(unit ?? ''))?.family !== unitKind(line.holds.of);
  });

const isOdd = (row: readonly string[]): boolean =>
  row.slice(0, 2).some((name) => /^\s|\s$|[*?~]|^[<>=]/.test(name));

/** @param snapshot of garden and card, worked out */
export const planNow = (snapshot: Snapshot): PlannedNow => {
  const beside = (name: string) => {
    const { sheet, row, column } = areaNamed(snapshot, name)!;
    return cellAt(snapshot, sheet, row, column).value;
  };
  const garden = readGarden(snapshot);
  const [start, style] = [beside(CARD_CELLS.start), String(beside(CARD_CELLS.style)).trim().toLowerCase()];
  const reason = String(beside(LATER_CELLS.reason) ?? '').trim();
  const input =
    typeof start === 'number' && (style === 'full' || style === 'equal')
      ? roundInput({ ...garden, problems: [] }, { start: start * 86_400, style, overLabelReason: reason })
      : [];
  const plan = Array.isArray(input) ? undefined : planRound(input);
  const rows = columnText(snapshot, 'plants', ['bed', 'sizeClass', 'howMany']);
  return {
    garden,
    reason,
    ...(Array.isArray(input) || plan === undefined || 'refused' in plan ? {} : { planned: { input, plan } }),
    walk: JSON.stringify(columnText(snapshot, 'beds', ['walk', 'bed', 'station'])),
    plants: JSON.stringify(rows),
    oddUnit: hasOddUnit(snapshot),
    odd: rows.some(isOdd),
    oddAnywhere: [
      ...rows,
      ...columnText(snapshot, 'beds', ['bed', 'station']),
      ...columnText(snapshot, 'doses', ['sizeClass']),
    ].some(isOdd),
  };
};

/** Why a card that was made of one state need not follow to another; nothing where it has to. */
export const causes = (made: PlannedNow, now: PlannedNow): string[] => {
  if (!now.planned) return ['it cannot be planned'];
  if (now.garden.problems.length > 0) return ['a row cannot be read'];
  if (now.oddUnit) return ['a unit of the rig is of another kind'];
  const [before, after] = [made.planned!, now.planned];
  const found: string[] = [];
  const because = (cause: string, holds: boolean) => {
    if (holds) found.push(cause);
  };
  because('the walk is another', made.walk !== now.walk);
  because('odd names', made.plants !== now.plants && (made.odd || now.odd));
  const keys = ({ input }: typeof after) =>
    new Map(input.mix.map((product) => [nameKey(product.name), product]));
  const [mixBefore, mixAfter] = [keys(before), keys(after)];
  because('other products', [...mixBefore.keys()].sort().join() !== [...mixAfter.keys()].sort().join());
  const rateOf = ({ garden }: PlannedNow, name: string) =>
    garden.mix.find(({ product }) => nameKey(product) === name)!.rate;
  for (const [name, product] of mixAfter) {
    const was = mixBefore.get(name);
    if (!was) continue;
    const [rate, then] = [rateOf(now, name), rateOf(made, name)];
    const [unit, unitThen] = [findRateUnit(rate.unit)!, findRateUnit(then.unit)!];
    because('another form', was.form !== product.form);
    because('another measure', unit.token !== unitThen.token);
    because('no label any more', was.greatestRate !== undefined && product.greatestRate === undefined);
    const above = overLabel([product]).length > 0;
    because('above the label', above && (overLabel([was]).length === 0 || rate.value > then.value));
  }
  const sizes = new Set(before.plan.counts.map(({ sizeClass }) => nameKey(sizeClass)));
  because(
    'other sizes',
    after.plan.counts.some(({ sizeClass }) => !sizes.has(nameKey(sizeClass))),
  );
  const stations = new Map(after.plan.stations.map((station) => [nameKey(station.station), station]));
  because('other stations', after.plan.stations.length !== before.plan.stations.length);
  for (const { station, beds, fills } of before.plan.stations) {
    const here = stations.get(nameKey(station));
    const known = new Set(beds.map(nameKey));
    because('a station is empty', here === undefined);
    because('other beds', here?.beds.some((bed) => !known.has(nameKey(bed))) === true);
    because('more fills', (here?.fills.length ?? 0) > fills.length);
  }
  return found;
};
