import { nameKey, SIZE_CLASSES, type System } from '../../core';
import type { Change } from '../change';
import { usualUnit } from '../fields/usualUnits';
import type { Garden } from '../garden';
import type { Snapshot } from '../port';
import { readGarden } from '../readGarden';
import { DOSES } from '../sheets/startingDoses';
import { gardenSheets } from '../sheets/gardenSheets';
import { SHAPE } from '../shapes';
import { putBackWords } from '../sheets/putBack';
import { placeSheets, type BuiltSheets } from '../tables/buildSheets';
import { type SheetWishes } from '../tables/layOut';
import { checkWishes } from '../tables/checkWishes';
import type { FormWish } from '../tables/writeForm';
import type { TableWish } from '../tables/writeTable';

/** What an action wants of the garden's sheets. */
export interface GardenWish {
  /** What the undo entry says: "Keep the rig". */
  readonly title: string;
  /** What new sheets start with; the garden's own setting wins. */
  readonly measures: System;
  readonly tables?: Readonly<Record<string, TableWish>>;
  readonly forms?: Readonly<Record<string, FormWish>>;
  /** Puts back all that was deleted of the sheets. */
  readonly whole?: boolean;
  /** Sheet to show afterwards, by what it holds. */
  readonly show?: 'plants' | 'beds' | 'doses' | 'rig' | 'products' | 'mix';
}

type Rows = readonly Readonly<Record<string, unknown>>[];

const labels = (rows: Rows, key: string): string[] => rows.map((row) => String(row[key] ?? ''));

const distinct = (names: readonly string[]): string[] => {
  const seen = new Map<string, string>();
  for (const name of names) if (name !== '' && !seen.has(nameKey(name))) seen.set(nameKey(name), name);
  return [...seen.values()];
};

/** Beds that the plants name and the Beds sheet does not: they go to the end of the walk. */
const bedsToAdd = (garden: Garden, planted: readonly string[], wanted: Rows): Rows => {
  const known = new Set([...garden.beds.map(({ bed }) => bed), ...labels(wanted, 'bed')].map(nameKey));
  const last = Math.max(0, ...garden.beds.map(({ walk }) => Math.ceil(walk ?? 0)));
  return distinct(planted)
    .filter((bed) => !known.has(nameKey(bed)))
    .map((bed, index) => ({ bed, walk: last + 1 + index, station: garden.beds.length === 0 ? 'A' : '' }));
};

/** A new Doses sheet starts with common practice; size classes that only the plants name wait for a dose. */
const dosesToAdd = (garden: Garden, measures: System, sizes: readonly string[]): Rows => {
  const started = garden.has.doses
    ? []
    : SIZE_CLASSES.map((sizeClass) => ({ sizeClass, dose: DOSES[measures][sizeClass] }));
  const known = new Set([...garden.doses, ...started].map(({ sizeClass }) => nameKey(sizeClass)));
  const others = distinct(sizes).filter((sizeClass) => !known.has(nameKey(sizeClass)));
  return [...started, ...others.map((sizeClass) => ({ sizeClass }))];
};

const withRows = (wish: TableWish | undefined, rows: Rows): TableWish => ({
  ...wish,
  add: [...(wish?.add ?? []), ...rows],
});

/**
 * The garden's sheets as an action wants them: a new garden is made whole, and beds and size classes that the plants
 * name are listed. Gives the places too, for sheets that are built on these in the same change.
 *
 * @param snapshot with `gardenAreas` read
 * @throws WorkbookError where a value is not allowed, in a plain sentence
 */
export const gardenEdits = (snapshot: Snapshot, wish: GardenWish): BuiltSheets => {
  const garden = readGarden(snapshot);
  const measures = garden.has.settings ? garden.settings.measures : wish.measures;
  const { whole = !Object.values(garden.has).some(Boolean) } = wish;
  const plants = wish.tables?.['plants']?.add ?? [];
  const planted = [...garden.plants.map(({ bed }) => bed), ...labels(plants, 'bed')];
  const sizes = [...garden.plants.map(({ sizeClass }) => sizeClass), ...labels(plants, 'sizeClass')];
  const { beds, doses } = wish.tables ?? {};
  /** True where its rows follow from the plants: not on a sheet that the user took away. */
  const follows = (key: 'beds' | 'doses') =>
    whole || garden.has[key] || plants.length > 0 || wish.tables?.[key] !== undefined;
  const wishes: SheetWishes = {
    measures,
    forms: {
      ...(garden.has.settings ? {} : { settings: { shape: { value: SHAPE } } }),
      ...wish.forms,
    },
    ...(whole ? { make: 'all' } : {}),
    tables: {
      ...wish.tables,
      ...(follows('beds') && {
        beds: withRows(beds, bedsToAdd(garden, planted, [...(beds?.add ?? []), ...(beds?.set ?? [])])),
      }),
      ...(follows('doses') && {
        doses: {
          ...withRows(doses, dosesToAdd(garden, measures, sizes)),
          heads: { ...(garden.has.doses ? {} : { unit: usualUnit(measures, 'dose') }), ...doses?.heads },
        },
      }),
    },
  };
  checkWishes(gardenSheets, wishes);
  return placeSheets(gardenSheets, snapshot, wishes);
};

/** The edits under their title, what was put back with them, and the sheet to show. */
export const asChange = ({ edits, places, made }: BuiltSheets, { title, show }: GardenWish): Change => {
  const at =
    show === undefined
      ? undefined
      : show === 'rig'
        ? places.cells['Rig_barrel']
        : { sheet: places.sites[show]!.sheet, row: 0, column: 0 };
  return {
    title,
    edits: at ? [...edits, { kind: 'activate', sheet: at.sheet, row: at.row, column: at.column }] : edits,
    says: putBackWords(made),
  };
};

export const gardenChange = (snapshot: Snapshot, wish: GardenWish): Change =>
  asChange(gardenEdits(snapshot, wish), wish);
