import type { Garden } from '../../addin/workbook/garden';
import { withFacts } from '../../taskpane/facts';
import { startState, type PaneState } from '../../taskpane/state';
import { blankRig } from '../workbook/blankRig';

/** A garden as its sheets hold it, ready to feed: 100 large bushes and 40 potted miniatures, in two beds. */
export const readyGarden: Garden = {
  settings: { gardenName: '', grower: '', measures: 'US', currency: '$', fillStyle: 'full' },
  plants: [
    {
      row: 4,
      plant: 'Amber Kettle',
      bed: 'Front',
      sizeClass: 'Large bush',
      howMany: 100,
      roseClass: '',
      notes: '',
    },
    {
      row: 5,
      plant: 'Tin Whistle',
      bed: 'Terrace',
      sizeClass: 'Potted miniature',
      howMany: 40,
      roseClass: '',
      notes: '',
    },
  ],
  beds: [
    { row: 4, bed: 'Front', walk: 1, station: 'A' },
    { row: 5, bed: 'Terrace', walk: 2, station: '' },
  ],
  doseUnit: 'gal',
  doses: [
    { row: 5, sizeClass: 'Large bush', dose: 0.75 },
    { row: 6, sizeClass: 'Potted miniature', dose: 0.25 },
  ],
  rig: {
    ...blankRig,
    barrel: { value: 60, unit: 'gal' },
    fillLine: 1,
    heel: { value: 0, unit: 'gal' },
    flow: { value: 2.5, unit: 'gal/min' },
    bucket: { value: 2, unit: 'gal' },
    tapFlow: { value: 5, unit: 'gal/min' },
    betweenPlants: 0,
    wandStaysOpen: false,
    countStep: 1,
    emptyWeight: { value: 25, unit: 'lb' },
    premixTime: 10,
    moveTime: 5,
  },
  timedBuckets: [],
  products: [
    {
      row: 4,
      name: 'Soluble powder 20-20-20',
      form: 'powder',
      density: 0.9,
      N: 20,
      greatestRate: { value: 1, unit: 'tbsp/gal' },
    },
    { row: 5, name: 'Seaweed', form: 'liquid' },
  ],
  mixName: '',
  mix: [{ row: 4, product: 'Soluble powder 20-20-20', rate: { value: 1, unit: 'tbsp/gal' } }],
  problems: [],
  has: {
    plants: true,
    beds: true,
    doses: true,
    rig: true,
    timedBuckets: true,
    products: true,
    mix: true,
    settings: true,
  },
};

/** A pane that has read a garden and shows a section of it. */
export const paneOn = (
  section: PaneState['section'],
  garden: Garden = readyGarden,
  more: Partial<PaneState> = {},
): PaneState =>
  withFacts({
    ...startState({ today: () => '2026-05-03', measures: 'US' }),
    section,
    chosen: true,
    garden,
    ...more,
  });
