import { cellAddress } from '../../../addin/workbook/address';
import type { Kept } from '../../workbook/earlierFiles';

/** The invented garden of the earlier workbooks: small, so that the files are. */
export const LIST = 'My roses';

/** A list as a grower keeps it: a title over it, blank lines, spellings as they came, a total that is wrong. */
export const ROSES: readonly (readonly (string | number | null)[])[] = [
  ['ROSES BEHIND THE MILL'],
  ['Invented. Ask me before you dig!'],
  [],
  [null, 'Rose', 'Where', 'Type', 'In pot?', 'How many', 'Yr planted', 'Notes'],
  [1, 'Winter Lantern', 'Gate bed', 'HT', null, 3, 2014, 'blackspot last fall'],
  [2, 'Copper Gate', 'gate bed ', 'Flori', null, 'two', 2016],
  [3, 'Small Talk', 'Patio', 'Mini', 'pot', 'x5', 2019, 'best in show 2 years ago'],
  [],
  [4, 'Slow Tide', 'LONG BORDER', 'Shrub', null, 2, 2009],
  [5, 'Paper Kite', 'Long border', 'HT', null, 40, 2011, 'the hedge'],
  [6, 'Old Harbour', 'Long border', 'Climber', 'no', 1, 2003, 'keep for cuttings'],
  [],
  [null, 'Total', null, null, null, 55],
];

const list: Kept = {
  own: Object.fromEntries(
    ROSES.flatMap((line, row) =>
      line.flatMap((typed, column) =>
        typed === null ? [] : [[`${LIST}!${cellAddress(row, column)}`, typed] as const],
      ),
    ),
  ),
  plants: [],
  beds: [],
  doses: {},
  seconds: [],
  products: [],
  mix: [],
  log: [],
};

const inventory: Kept = {
  ...list,
  plants: [
    ['Winter Lantern', 'Gate bed', 'Large bush', 3],
    ['Copper Gate', 'Gate bed', 'Bush', 2],
    ['Small Talk', 'Patio', 'Potted miniature', 5],
    ['Slow Tide', 'Long border', 'Large bush', 2],
    ['Paper Kite', 'Long border', 'Large bush', 40],
    ['Old Harbour', 'Long border', 'Climber', 1],
  ],
  beds: [
    ['Gate bed', 1, 'A'],
    ['Patio', 2, 'A'],
    ['Long border', 3, 'A'],
  ],
  doses: { 'Large bush': 0.75, Bush: 0.6, 'Potted miniature': 0.25, Climber: 1 },
};

const whole: Kept = {
  ...inventory,
  beds: [
    ['Gate bed', 1, 'Gate'],
    ['Patio', 2, 'Gate'],
    ['Long border', 3, 'Orchard'],
  ],
  doses: { ...inventory.doses, 'Large bush': 0.8 },
  barrel: '60 gal',
  seconds: [46.1, 45.8, 46.6],
  products: [
    ['Soluble powder 20-20-20', 'powder', '1 tbsp/gal'],
    ['Fish and kelp liquid', 'liquid', '2 tbsp/gal'],
  ],
  mix: [
    ['Soluble powder 20-20-20', '1 tbsp/gal'],
    ['Fish and kelp liquid', '2 tbsp/gal'],
  ],
  card: {
    day: '2026-05-03',
    mix: 'Bloom feed',
    plants: 53,
    products: ['Soluble powder 20-20-20', 'Fish and kelp liquid'],
  },
  log: [{ day: '2026-05-03', leftOver: 2, notes: 'cool and cloudy' }],
};

/** What each garden holds when it is saved; what a user adds on its sheets by hand is told when it is done. */
export const GARDENS = {
  'untidy-list': list,
  'empty-garden': { ...list, own: {} },
  inventory,
  'whole-garden': whole,
  'two-rounds': {
    ...whole,
    card: { ...whole.card!, day: '2026-05-17' },
    log: [...whole.log, { day: '2026-05-17', leftOver: 3.5, notes: 'wind, walked fast' }],
  },
  'above-the-label': {
    ...whole,
    mix: [['Soluble powder 20-20-20', '1.5 tbsp/gal'], whole.mix[1]!],
    card: { ...whole.card!, day: '2026-05-10' },
  },
  'own-columns': whole,
} as const satisfies Readonly<Record<string, Kept>>;

export type GardenName = keyof typeof GARDENS;
