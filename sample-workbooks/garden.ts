import type { RoseClass, SizeClass } from '../addin/core';
import { VARIETIES } from './varieties';

/** The sample garden: invented people, places and roses; the same on every run. */
export const GARDEN = {
  name: 'The garden at Pebbleford',
  grower: 'Wilmot Hazeldrake',
  measures: 'US',
} as const;

export interface SampleBed {
  readonly bed: string;
  /** Where the barrel stands for it. */
  readonly station: string;
  /** Middle of the bed, feet from the gate. */
  readonly position: { readonly x: number; readonly y: number };
  readonly planting: readonly {
    readonly roseClass: RoseClass;
    readonly plants: number;
    readonly pot?: true;
  }[];
}

const hybridTeas = (plants: number) => ({ roseClass: 'Hybrid tea', plants }) as const;
const pottedMiniatures = (plants: number) => ({ roseClass: 'Miniature', plants, pot: true }) as const;

/** Beds in the order of the walk. */
export const BEDS: readonly SampleBed[] = [
  {
    bed: 'Front walk',
    station: 'Driveway',
    position: { x: 12, y: 8 },
    planting: [hybridTeas(30), { roseClass: 'Tree rose', plants: 3 }],
  },
  {
    bed: 'Mailbox bed',
    station: 'Driveway',
    position: { x: 30, y: 4 },
    planting: [hybridTeas(16), { roseClass: 'Grandiflora', plants: 6 }],
  },
  {
    bed: 'Driveway border',
    station: 'Driveway',
    position: { x: 44, y: 14 },
    planting: [hybridTeas(28), { roseClass: 'Floribunda', plants: 4 }],
  },
  {
    bed: 'North fence',
    station: 'Driveway',
    position: { x: 52, y: 30 },
    planting: [hybridTeas(20), { roseClass: 'Climber', plants: 3 }],
  },
  {
    bed: 'Island bed',
    station: 'Driveway',
    position: { x: 34, y: 26 },
    planting: [hybridTeas(20), { roseClass: 'Floribunda', plants: 10 }],
  },
  { bed: 'Birdbath circle', station: 'Driveway', position: { x: 22, y: 22 }, planting: [hybridTeas(12)] },
  {
    bed: 'Kitchen bed',
    station: 'Back lawn',
    position: { x: 20, y: 58 },
    planting: [hybridTeas(18), { roseClass: 'Miniature', plants: 3 }],
  },
  {
    bed: 'Arbor bed',
    station: 'Back lawn',
    position: { x: 32, y: 66 },
    planting: [{ roseClass: 'Climber', plants: 4 }, hybridTeas(10)],
  },
  {
    bed: 'Long border',
    station: 'Back lawn',
    position: { x: 48, y: 74 },
    planting: [hybridTeas(22), { roseClass: 'Floribunda', plants: 6 }],
  },
  {
    bed: 'Plum tree bed',
    station: 'Back lawn',
    position: { x: 28, y: 84 },
    planting: [
      { roseClass: 'Shrub', plants: 8 },
      { roseClass: 'Old garden rose', plants: 4 },
      { roseClass: 'Polyantha', plants: 3 },
    ],
  },
  { bed: 'Sun terrace', station: 'Patio', position: { x: 74, y: 62 }, planting: [hybridTeas(30)] },
  {
    bed: 'Shed wall',
    station: 'Patio',
    position: { x: 88, y: 56 },
    planting: [hybridTeas(22), { roseClass: 'Climber', plants: 2 }],
  },
  { bed: 'Patio pots', station: 'Patio', position: { x: 80, y: 70 }, planting: [pottedMiniatures(44)] },
  {
    bed: 'Deck pots',
    station: 'Patio',
    position: { x: 92, y: 72 },
    planting: [pottedMiniatures(14), { roseClass: 'Miniflora', plants: 8, pot: true }],
  },
];

/** One line of the garden: a variety in a bed. */
export interface SampleRose {
  readonly variety: string;
  readonly roseClass: RoseClass;
  readonly bed: string;
  readonly pot: boolean;
  readonly count: number;
  readonly planted: number;
  readonly source: string;
}

const GROUPS = [3, 1, 2, 4, 1, 2, 5, 1, 3, 2];
const SOURCES = ['mail order', 'club sale', 'swap', 'gift', ''];
const FIRST_YEAR = 2009;
const YEARS = 15;

/** Splits each planting into groups of a variety; the varieties of a class take turns through the garden. */
const plantGarden = (): readonly SampleRose[] => {
  const turn = new Map<RoseClass, number>();
  const roses: SampleRose[] = [];
  for (const { bed, planting } of BEDS)
    for (const { roseClass, plants, pot } of planting) {
      const varieties = VARIETIES[roseClass]!;
      for (let left = plants; left > 0;) {
        const next = turn.get(roseClass) ?? 0;
        turn.set(roseClass, next + 1);
        const at = roses.length;
        const count = Math.min(left, GROUPS[at % GROUPS.length]!);
        left -= count;
        roses.push({
          variety: varieties[next % varieties.length]!,
          roseClass,
          bed,
          pot: pot === true,
          count,
          planted: FIRST_YEAR + ((at * 7) % YEARS),
          source: SOURCES[(at * 3) % SOURCES.length]!,
        });
      }
    }
  return roses;
};

/** About 350 roses, bed by bed. */
export const ROSES: readonly SampleRose[] = plantGarden();

/** Gallons for one plant. */
export const DOSES: Readonly<Partial<Record<SizeClass, number>>> = {
  'Large bush': 0.75,
  Bush: 0.6,
  'Small bush': 0.4,
  Miniature: 0.3,
  'Potted miniature': 0.25,
  Climber: 1,
  'Tree rose': 0.75,
};

/** The barrel, and the wand timed into a 5 gal bucket. */
export const RIG = {
  barrelGallons: 60,
  heelGallons: 1,
  bucketGallons: 5,
  bucketSeconds: [116, 114.5, 115.8, 115.3],
} as const;
