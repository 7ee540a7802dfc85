import { nameKey } from '../../addin/core';
import type { Bed, Dose, Garden, Plant } from '../../addin/workbook/garden';
import { bedsTable } from '../../addin/workbook/sheets/beds';
import { dosesTable } from '../../addin/workbook/sheets/doses';
import { walkOf } from '../../addin/workbook/walk';
import { askTableRow, type AskedRow } from '../askFields';
import { firstOfEach, inId } from '../named';
import { plural } from '../quantityWords';
import type { PaneState } from '../state';
import type { Block } from '../view';

import { fold } from './fold';

const MANY_BEDS = 8;

/** Plants by bed or by size class, in one pass over the list. */
const plantsBy = (plants: readonly Plant[], of: 'bed' | 'sizeClass'): ReadonlyMap<string, number> => {
  const totals = new Map<string, number>();
  for (const plant of plants)
    totals.set(nameKey(plant[of]), (totals.get(nameKey(plant[of])) ?? 0) + plant.howMany);
  return totals;
};

/** Beds of the sheet in the order in which they are fed. */
const bedsInWalk = ({ beds }: Garden): Bed[] => {
  const byName = new Map([...beds].reverse().map((bed) => [nameKey(bed.bed), bed]));
  return [...new Set(walkOf(beds, []).flatMap(({ bed }) => byName.get(nameKey(bed)) ?? []))];
};

export const askBeds = (state: PaneState, garden: Garden): AskedRow<Bed>[] =>
  bedsInWalk(garden).map((bed) =>
    askTableRow(state, bedsTable, bed, {
      section: 'garden',
      prefix: `bed.${inId(bed.bed)}.`,
      settings: garden.settings,
    }),
  );

export interface DoseAnswers {
  readonly plants: number;
  readonly asked: AskedRow<Dose>;
}

/** Doses of the sizes that have plants, and of those the sheet has already. */
export const askDoses = (state: PaneState, garden: Garden): DoseAnswers[] => {
  const totals = plantsBy(garden.plants, 'sizeClass');
  return firstOfEach(garden.doses, ({ sizeClass }) => sizeClass).map((dose) => {
    const plants = totals.get(nameKey(dose.sizeClass)) ?? 0;
    const asked = askTableRow<Dose>(state, dosesTable, dose, {
      section: 'garden',
      prefix: `dose.${inId(dose.sizeClass)}.`,
      settings: garden.settings,
      unit: garden.doseUnit,
      needed: plants > 0 ? ['dose'] : [],
    });
    return { plants, asked };
  });
};

/** Sizes that plants have and the doses do not name. */
export const sizesWithoutDose = ({ plants, doses }: Garden): string[] => {
  const named = new Set(doses.map(({ sizeClass }) => nameKey(sizeClass)));
  const sizes = plants.filter(({ howMany }) => howMany > 0).map(({ sizeClass }) => sizeClass);
  return [...new Set(sizes)].filter((size) => !named.has(nameKey(size)));
};

/** @example 348 roses in 14 beds, fed from 2 stations */
export const gardenSentence = (garden: Garden): string => {
  const { plants, beds } = garden;
  const roses = plural(
    plants.reduce((sum, { howMany }) => sum + howMany, 0),
    'rose',
  );
  const walk = walkOf(
    beds,
    plants.map(({ bed }) => bed),
  );
  const stations = new Set(walk.map(({ station }) => nameKey(station))).size;
  const from = stations > 1 ? `, fed from ${plural(stations, 'station')}` : '';
  return `${roses} in ${plural(walk.length, 'bed')}${from}`;
};

export const dosesBlock = (doses: readonly DoseAnswers[]): Block => ({
  kind: 'table',
  table: {
    id: 'garden.doses',
    caption: 'Dose for one plant',
    columns: [{ label: 'Size' }, { label: 'Plants', numeric: true }, { label: 'Dose' }],
    rows: doses
      .filter(({ plants, asked }) => plants > 0 || asked.known.dose === undefined)
      .map(({ asked, plants }) => [asked.row.sizeClass, plants.toLocaleString('en-US'), ...asked.under('')]),
  },
});

export const bedsBlock = (state: PaneState, garden: Garden, beds: readonly AskedRow<Bed>[]): Block => {
  const totals = plantsBy(garden.plants, 'bed');
  const table: Block = {
    kind: 'table',
    table: {
      id: 'garden.beds',
      caption: 'The walk, and where the barrel stands',
      columns: [
        { label: 'Bed' },
        { label: 'Plants', numeric: true },
        { label: 'Walk' },
        { label: 'Station' },
      ],
      rows: beds.map(({ row: { bed }, under }) => [
        bed,
        (totals.get(nameKey(bed)) ?? 0).toLocaleString('en-US'),
        ...under(''),
      ]),
    },
  };
  return beds.length > MANY_BEDS
    ? fold(state, 'garden.beds', `${plural(beds.length, 'bed')}: walk and stations`, [table])
    : table;
};
