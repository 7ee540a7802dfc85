import {
  countFor,
  doseFrom,
  findRateUnit,
  findUnit,
  fromCanonical,
  litres,
  massOf,
  nameKey,
  passesRate,
  ppmOf,
  productFor,
  seconds,
  shareOf,
  toAmount,
  type MixProduct,
} from '../../../addin/core';
import { amountIn } from '../../../addin/core';
import type { CellState, Snapshot } from '../../../addin/workbook/port';
import { gardenSheets } from '../../../addin/workbook/sheets/gardenSheets';
import { cellAt } from '../../../addin/workbook/snapshot';
import { placesOf } from '../../../addin/workbook/tables/buildSheets';
import { referenceConvert } from '../../oracles/referenceUnits';
import { compare } from './compare';
import type { PlannedNow } from './planNow';

const NUTRIENTS = ['N', 'P2O5', 'K2O', 'Fe'] as const;
const ABOVE = 'above the label';

/** Every computed cell of Plants, Beds, Doses, Mix and Products that is not what the core makes of the cells now. */
export const sheetsDisagree = (
  snapshot: Snapshot,
  { garden, planned, oddAnywhere }: PlannedNow,
): string[] => {
  if (!planned || oddAnywhere || garden.problems.length > 0) return [];
  const check = compare();
  const { sites } = placesOf(gardenSheets, snapshot)!;
  const cellOf = (table: string, row: number, key: string): CellState =>
    cellAt(snapshot, sites[table]!.sheet, row, sites[table]!.columns[key]!);
  const shown = (table: string, row: number, key: string) => {
    const { value, error } = cellOf(table, row, key);
    return error ?? value ?? '';
  };
  const is = (table: string, row: number, key: string, wanted: number | string) => {
    // A row that was typed below has its formulas with the next action.
    if (cellOf(table, row, key).formula === undefined) return;
    const what = `${table}, row ${row + 1}, ${key}`;
    if (typeof wanted === 'number') check.number(what, shown(table, row, key), wanted);
    else check.text(what, shown(table, row, key), wanted);
  };
  const { rig, groups } = planned.input;
  const doseUnit = findUnit(garden.doseUnit, 'volume')!;
  const step = garden.rig.countStep;
  const doseOf = (name: string) => garden.doses.find(({ sizeClass }) => nameKey(sizeClass) === nameKey(name));
  const same = (a: string) => (b: string) => nameKey(a) === nameKey(b);

  for (const { row, sizeClass, dose } of garden.doses) {
    const plants = garden.plants.filter((plant) => same(sizeClass)(plant.sizeClass));
    is(
      'doses',
      row,
      'plants',
      plants.reduce((sum, { howMany }) => sum + howMany, 0),
    );
    is('doses', row, 'used', dose ?? 'no dose');
    if (dose === undefined) continue;
    const exact = litres(referenceConvert(dose, garden.doseUnit, 'L'));
    const count = step === undefined ? (exact / rig.flow) * 60 : countFor(exact, rig.flow, seconds(step));
    is('doses', row, 'seconds', count);
    is('doses', row, 'gives', fromCanonical(doseFrom(seconds(count), rig.flow), doseUnit));
  }
  for (const { row, sizeClass, howMany } of garden.plants) {
    const dose = doseOf(sizeClass);
    is('plants', row, 'dose', dose?.dose ?? 'no dose');
    if (dose?.dose === undefined) continue;
    is('plants', row, 'seconds', shown('doses', dose.row, 'seconds') as number);
    is('plants', row, 'solution', howMany * dose.dose);
  }
  const counted = garden.plants.every(({ row }) => cellOf('plants', row, 'solution').formula !== undefined);
  for (const { row, bed } of garden.beds) {
    const here = groups.filter((group) => same(bed)(group.bed));
    is(
      'beds',
      row,
      'plants',
      here.reduce((sum, { plants }) => sum + plants, 0),
    );
    const solution = here.reduce((sum, { plants, sizeClass }) => sum + plants * doseOf(sizeClass)!.dose!, 0);
    if (counted) is('beds', row, 'solution', solution);
  }
  const filled = litres(rig.barrel * rig.fillLine);
  const labels = new Map<string, string>();
  garden.mix.forEach(({ row, product, rate }, index) => {
    const one: MixProduct = planned.input.mix[index]!;
    const bought = garden.products.find(({ name }) => same(product)(name))!;
    const measure = findRateUnit(rate.unit)!.amount;
    const greatest = one.greatestRate;
    const over = greatest && passesRate(one.rate, greatest, one.density);
    const label = greatest === undefined ? "label's rate not given" : over ? ABOVE : 'within the label';
    // Volume against mass without a density: an error in the cell, and no plan above the label.
    if (greatest !== undefined && over === undefined) return;
    if (cellOf('mix', row, 'label').formula !== undefined) labels.set(nameKey(product), label);
    is('mix', row, 'label', label);
    if (greatest) is('mix', row, 'share', shareOf(one.rate, greatest, one.density)!);
    const amount = productFor(one.rate, filled);
    is('mix', row, 'barrelful', over ? ABOVE : amountIn(amount, measure, one.density)!);
    is('mix', row, 'measure', rate.unit.split('/')[0]!);
    const mass = massOf(productFor(one.rate, litres(1)), one.density);
    is('mix', row, 'grams', mass ?? 'needs density');
    for (const nutrient of NUTRIENTS) {
      const percent = bought[nutrient] ?? 0;
      const ppm = mass === undefined ? 'needs density' : ppmOf(mass, percent / 100, litres(1));
      is('mix', row, nutrient, percent > 0 ? ppm : '');
    }
    if (over || bought.price === undefined || bought.pack === undefined) return is('mix', row, 'cost', '');
    const part = shareOf(amount, toAmount(bought.pack.value, findUnit(bought.pack.unit)!), one.density);
    if (part !== undefined) is('mix', row, 'cost', part * bought.price);
  });
  for (const { row, name, price, pack } of garden.products) {
    is('products', row, 'unitCost', price === undefined || pack === undefined ? '' : price / pack.value);
    if (!garden.mix.some(({ product }) => same(product)(name))) is('products', row, 'inMix', '');
    else if (labels.has(nameKey(name))) is('products', row, 'inMix', labels.get(nameKey(name))!);
  }
  return check.found;
};
