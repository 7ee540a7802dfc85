import type { Bed, Dose, Garden, Plant } from '../../addin/workbook/garden';
import { nameKey, walkOf } from '../../addin/workbook/walk';
import { askNumber, askText, type Asked } from '../asked';
import { plural } from '../quantityWords';
import type { PaneState } from '../state';
import type { Block } from '../view';

import { fold } from './fold';

const MANY_BEDS = 8;

const sumOf = (plants: readonly Plant[], of: (plant: Plant) => boolean): number =>
  plants.reduce((sum, plant) => (of(plant) ? sum + plant.howMany : sum), 0);

const sameName = (one: string, other: string): boolean => nameKey(one) === nameKey(other);

/** Beds of the sheet in the order in which they are fed. */
const bedsInWalk = ({ beds }: Garden): Bed[] =>
  walkOf(beds, []).flatMap(({ bed }) => beds.find((one) => sameName(one.bed, bed)) ?? []);

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
export const askDoses = (state: PaneState, garden: Garden): DoseAnswers[] =>
  garden.doses.map((dose) => {
    const plants = sumOf(garden.plants, ({ sizeClass }) => sameName(sizeClass, dose.sizeClass));
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
        sumOf(garden.plants, (plant) => sameName(plant.bed, bed.bed)).toLocaleString('en-US'),
        walk.field,
        station.field,
      ]),
    },
  };
  return beds.length > MANY_BEDS
    ? fold(state, 'garden.beds', `${plural(beds.length, 'bed')}: walk and stations`, [table])
    : table;
};
