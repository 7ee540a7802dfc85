import type { System } from '../core';
import type { Area } from './change';
import type { Bed, Dose, Garden, MixRow, Plant, Product } from './garden';
import type { Outline, Snapshot } from './port';
import { bedsTable } from './sheets/beds';
import { DOSE_UNIT } from './sheets/defaults';
import { dosesTable } from './sheets/doses';
import { gardenSheets } from './sheets/gardenSheets';
import { mixTable } from './sheets/mix';
import { plantsTable } from './sheets/plants';
import { productsTable } from './sheets/products';
import { rigForm } from './sheets/rig';
import { settingsForm } from './sheets/settings';
import { timedBucketsTable } from './sheets/timedBuckets';
import { readRig, rigEntry } from './readRig';
import { doubledRows, missingUnits } from './rowProblems';
import { areaNamed, usedArea } from './snapshot';
import type { SheetSet } from './tables/buildSheets';
import { readForm } from './tables/readForm';
import { readTable } from './tables/readTable';

const namesOf = (set: SheetSet): string[] =>
  set.sheets.flatMap((entry) =>
    entry.kind === 'table'
      ? [entry.table.name, ...(entry.table.heads ?? []).map((head) => head.name)]
      : [entry.form.name, ...entry.form.lines.map((line) => line.name)],
  );

/** What to read of a workbook for a set of sheets: all that is on the sheets that hold them, whatever their titles. */
export const areasOf = (set: SheetSet, outline: Outline): Area[] => {
  const sheets = new Set(
    namesOf(set).flatMap((name) => {
      const area = areaNamed(outline, name);
      return area ? [area.sheet] : [];
    }),
  );
  return [...sheets].flatMap((sheet) => usedArea(outline, sheet) ?? []);
};

/** What `readGarden` and the use cases need to have read. */
export const gardenAreas = (outline: Outline): Area[] => areasOf(gardenSheets, outline);

const measuredOr = <Key extends string>(key: Key, value: number | undefined, unit: string | undefined) =>
  (value === undefined || unit === undefined ? {} : { [key]: { value, unit } }) as {
    readonly [K in Key]?: { readonly value: number; readonly unit: string };
  };

/**
 * What the sheets of a garden hold, in the user's units, and every row that could not be read with the reason.
 *
 * @param snapshot with `gardenAreas` read
 */
export const readGarden = (snapshot: Snapshot): Garden => {
  const settings = readForm(settingsForm, snapshot);
  const measures = (settings.values['measures']?.value ?? 'metric') as System;
  const text = (key: string): string => String(settings.values[key]?.value ?? '');
  const plants = readTable(plantsTable, snapshot);
  const beds = readTable(bedsTable, snapshot);
  const doses = readTable(dosesTable, snapshot);
  const rig = readForm(rigForm, snapshot);
  const buckets = readTable(timedBucketsTable, snapshot);
  const products = readTable(productsTable, snapshot);
  const mix = readTable(mixTable, snapshot);

  const inMix = mix.rows.filter((row) => row.rate !== undefined && row.rate > 0);
  const reads = [plants, beds, doses, rig, buckets, products, mix, settings];
  const problems = [
    ...reads.flatMap((read) => read.problems),
    ...doubledRows(doses, dosesTable, 'sizeClass'),
    ...doubledRows(beds, bedsTable, 'bed'),
    ...doubledRows(products, productsTable, 'name'),
    ...doubledRows(mix, mixTable, 'product'),
    ...missingUnits({ ...mix, rows: inMix }, mixTable, 'rate', 'rateUnit'),
    ...missingUnits(products, productsTable, 'greatestRate', 'greatestRateUnit'),
    ...missingUnits(products, productsTable, 'pack', 'packUnit'),
  ];

  return {
    settings: {
      gardenName: text('gardenName'),
      grower: text('grower'),
      measures,
      currency: text('currency'),
      fillStyle: settings.values['fillStyle']?.value === 'equal' ? 'equal' : 'full',
    },
    plants: plants.rows as readonly Plant[],
    beds: beds.rows.map(({ row, bed, walk, station, x, y }): Bed => ({
      row,
      bed,
      station,
      ...(walk === undefined ? {} : { walk }),
      ...(x === undefined || y === undefined ? {} : { position: { x, y } }),
    })),
    doseUnit: doses.heads['unit'] ?? DOSE_UNIT[measures],
    doses: doses.rows as readonly Dose[],
    rig: readRig(rig.values, measures),
    timedBuckets: {
      bucket: rigEntry(rig.values, 'bucket', measures),
      seconds: buckets.rows.flatMap(({ seconds }) => (seconds === undefined ? [] : [seconds])),
    },
    products: products.rows.map(
      ({ greatestRate, greatestRateUnit, pack, packUnit, ...product }): Product => ({
        ...product,
        ...measuredOr('greatestRate', greatestRate, greatestRateUnit),
        ...measuredOr('pack', pack, packUnit),
      }),
    ),
    mixName: mix.heads['name'] ?? '',
    mix: inMix.flatMap(({ row, product, rate, rateUnit }): MixRow[] =>
      rate === undefined || rateUnit === undefined
        ? []
        : [{ row, product, rate: { value: rate, unit: rateUnit } }],
    ),
    problems,
    has: {
      plants: plants.site !== undefined,
      beds: beds.site !== undefined,
      doses: doses.site !== undefined,
      rig: rig.found,
      timedBuckets: buckets.site !== undefined,
      products: products.site !== undefined,
      mix: mix.site !== undefined,
      settings: settings.found,
    },
  };
};
