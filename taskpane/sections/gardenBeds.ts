import { nameKey } from '../../addin/core';
import type { Bed, Dose, Garden, Plant } from '../../addin/workbook/garden';
import { walkOf } from '../../addin/workbook/walk';
import { askNumber, askText, type Asked } from '../asked';
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

export interface BedAnswers {
  readonly bed: Bed;
  readonly walk: Asked<number>;
  readonly station: Asked<string>;
}

export const askBeds = (state: PaneState, garden: Garden): BedAnswers[] =>
  bedsInWalk(garden).map((bed) => ({
    bed,
    walk: askNumber(state, {
      section: 'garden',
      id: `bed.${bed.row}.walk`,
      label: `Place of ${bed.bed} in the walk`,
      known: bed.walk,
    }),
    station: askText(state, {
      section: 'garden',
      id: `bed.${bed.row}.station`,
      label: `Station for ${bed.bed}`,
      known: bed.station,
    }),
  }));

export interface DoseAnswers {
  readonly dose: Dose;
  readonly plants: number;
  readonly asked: Asked<number>;
}

/** Doses of the sizes that have plants, and of those the sheet has already. */
export const askDoses = (state: PaneState, garden: Garden): DoseAnswers[] => {
  const totals = plantsBy(garden.plants, 'sizeClass');
  return garden.doses.map((dose) => {
    const plants = totals.get(nameKey(dose.sizeClass)) ?? 0;
    return {
      dose,
      plants,
      asked: askNumber(state, {
        section: 'garden',
        id: `dose.${dose.row}`,
        label: `Dose for one ${dose.sizeClass}`,
        known: dose.dose,
        unit: garden.doseUnit,
        above: true,
        required: plants > 0,
      }),
    };
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
      .filter(({ plants, dose }) => plants > 0 || dose.dose === undefined)
      .map(({ dose, plants, asked }) => [dose.sizeClass, plants.toLocaleString('en-US'), asked.field]),
  },
});

export const bedsBlock = (state: PaneState, garden: Garden, beds: readonly BedAnswers[]): Block => {
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
      rows: beds.map(({ bed, walk, station }) => [
        bed.bed,
        (totals.get(nameKey(bed.bed)) ?? 0).toLocaleString('en-US'),
        walk.field,
        station.field,
      ]),
    },
  };
  return beds.length > MANY_BEDS
    ? fold(state, 'garden.beds', `${plural(beds.length, 'bed')}: walk and stations`, [table])
    : table;
};
