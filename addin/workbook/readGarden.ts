import type { Area } from './change';
import { usualUnit } from './fields/usualUnits';
import type { Garden, MixRow } from './garden';
import type { Outline, Snapshot } from './port';
import { bedsTable } from './sheets/beds';
import { dosesTable } from './sheets/doses';
import { gardenSheets } from './sheets/gardenSheets';
import { mixTable } from './sheets/mix';
import { plantsTable } from './sheets/plants';
import { productsTable } from './sheets/products';
import { rigForm } from './sheets/rig';
import { settingsForm } from './sheets/settings';
import { timedBucketsTable } from './sheets/timedBuckets';
import { doubledRows } from './rowProblems';
import { areaNamed, usedArea } from './snapshot';
import { type SheetSet } from './tables/layOut';
import { readForm } from './tables/readForm';
import { readTable } from './tables/readTable';

const namesOf = (set: SheetSet): string[] =>
  set.sheets.flatMap((entry) =>
    entry.kind === 'table'
      ? [entry.table.name, ...(entry.table.heads ?? []).map((head) => head.name)]
      : [entry.form.name, ...Object.values(entry.form.lines).map((line) => line.name)],
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

/**
 * What the sheets of a garden hold, in the user's units, and every row that could not be read with the reason.
 *
 * @param snapshot with `gardenAreas` read
 */
export const readGarden = (snapshot: Snapshot): Garden => {
  const settings = readForm(settingsForm, snapshot);
  const measures = settings.row.measures ?? 'metric';
  const plants = readTable(plantsTable, snapshot);
  const beds = readTable(bedsTable, snapshot);
  const doses = readTable(dosesTable, snapshot);
  const rig = readForm(rigForm, snapshot, measures);
  const timedBuckets = readTable(timedBucketsTable, snapshot);
  const products = readTable(productsTable, snapshot);
  const mix = readTable(mixTable, snapshot);

  const reads = { plants, beds, doses, rig, timedBuckets, products, mix, settings };
  const inMix = mix.rows.flatMap(({ rate, ...row }): MixRow[] =>
    rate !== undefined && rate.value > 0 ? [{ ...row, rate }] : [],
  );
  const problems = [
    ...Object.values(reads).flatMap((read) => read.problems),
    ...doubledRows(doses, dosesTable, 'sizeClass'),
    ...doubledRows(beds, bedsTable, 'bed'),
    ...doubledRows(products, productsTable, 'name'),
    ...doubledRows(mix, mixTable, 'product'),
  ];

  return {
    settings: { ...settings.row, measures },
    plants: plants.rows,
    beds: beds.rows,
    doseUnit: doses.heads['unit'] ?? usualUnit(measures, 'dose'),
    doses: doses.rows,
    rig: rig.row,
    timedBuckets: timedBuckets.rows.flatMap(({ seconds }) => seconds ?? []),
    products: products.rows,
    mixName: mix.heads['name'] ?? '',
    mix: inMix,
    problems,
    has: Object.fromEntries(
      Object.entries(reads).map(([key, read]) => [
        key,
        'found' in read ? read.found : read.site !== undefined,
      ]),
    ) as Garden['has'],
  };
};
