import type { ListCell, ListSheet, RoseClass } from '../addin/core';
import { GARDEN, ROSES, type SampleRose } from './garden';

const HEADINGS: ListCell[] = [
  '',
  'Rose',
  'Where',
  'Type',
  'In pot?',
  'How many',
  'Yr planted',
  'From',
  'Notes',
];

/** Growers write a class as it comes to the pen. */
const CLASS_SPELLINGS: Readonly<Partial<Record<RoseClass, readonly string[]>>> = {
  'Hybrid tea': ['HT', 'HT', 'H.T.', 'Hybrid Tea', 'ht', 'hyb. tea', 'Hybrid teas', 'HT '],
  Grandiflora: ['Gr', 'grandiflora'],
  Floribunda: ['F', 'Flori', 'floribunda', 'FL', 'Flouribunda'],
  Shrub: ['S', 'shrub', 'Shrubs', 'English'],
  'Old garden rose': ['OGR', 'old garden rose'],
  Polyantha: ['Poly', 'Pol.'],
  Climber: ['Cl', 'climber', 'LCl', 'Climbing'],
  'Tree rose': ['tree rose', 'standard'],
  Miniature: ['Min', 'mini', 'M', 'Minis', 'miniature', 'Minature'],
  Miniflora: ['MinFl', 'mini-flora'],
};
const POT_SPELLINGS: readonly ListCell[] = ['pot', 'yes', '3 gal pot', 'x', 'potted', 'container'];
const NOTES: Readonly<Record<number, string>> = {
  3: 'blackspot last fall',
  11: '=best in show 2 years ago',
  19: 'move in winter?',
  34: 'label lost,\nlooks right',
  52: '- prune hard',
  71: 'keep for cuttings',
  96: '@ the club table in June',
};

const bedSpelling = (bed: string, at: number): string => {
  if (at % 11 === 4) return bed.toUpperCase();
  if (at % 13 === 6) return `${bed.toLowerCase()} `;
  if (at % 17 === 8) return bed.replace(' ', '\u00a0');
  return bed;
};

const countSpelling = (count: number, at: number): ListCell => {
  if (count === 1 && at % 2 === 0) return null;
  if (count === 3 && at % 4 === 0) return 'three';
  if (count === 3 && at % 3 === 0) return '2 + 1';
  if (at % 9 === 5) return `x${count}`;
  if (at % 14 === 7) return `${count} plants`;
  return count;
};

const line = (rose: SampleRose, at: number): ListCell[] => {
  const spellings = CLASS_SPELLINGS[rose.roseClass]!;
  return [
    at + 1,
    at % 15 === 9 ? rose.variety.toUpperCase() : rose.variety,
    bedSpelling(rose.bed, at),
    spellings[at % spellings.length]!,
    rose.pot ? POT_SPELLINGS[at % POT_SPELLINGS.length]! : at % 8 === 3 ? 'no' : null,
    countSpelling(rose.count, at),
    at % 6 === 2 ? null : rose.planted,
    rose.source || null,
    NOTES[at] ?? null,
  ];
};

/** The lines about one group: one, or two where a plant was bought later; the second then has no number. */
const linesOf = (rose: SampleRose, at: number): ListCell[][] => {
  if (rose.count < 4) return [line(rose, at)];
  const [, ...later] = line({ ...rose, count: 1, planted: rose.planted + 2 }, at);
  return [line({ ...rose, count: rose.count - 1 }, at), [null, ...later]];
};

/** Lines that no one could read, with what is wrong with them. */
export const UNREADABLE: readonly { readonly cells: ListCell[]; readonly why: string }[] = [
  { cells: ['', 'Slate Minuet', 'Front walk', 'HT', null, 0, 2012, null, 'died'], why: 'none left' },
  {
    cells: ['', 'Paper Observatory', 'Long border', 'HT', null, 'some', null, 'gift', null],
    why: 'how many?',
  },
  { cells: ['', null, 'Shed wall', 'HT', null, 1, 2016, null, 'label gone'], why: 'no name' },
  { cells: ['', '?', 'Patio pots', 'Min', 'pot', 2, null, null, null], why: 'no name' },
];

/**
 * A grower's list as it grew over the years: a merged title, notes and blank lines above the headings, spellings
 * and abbreviations as they came, roses in more than one line, the headings again half way down, a few lines
 * that cannot be read, and a total that no longer adds up.
 */
export const untidyList = (): ListSheet => {
  const cells: ListCell[][] = [
    [GARDEN.name.toUpperCase()],
    ['A sample: the garden, its people and its roses are invented. Ask me before you dig!'],
    [],
    HEADINGS,
  ];
  const unreadable = UNREADABLE.map(({ cells }) => cells);
  for (const [at, rose] of ROSES.entries()) {
    if (at > 0 && rose.bed !== ROSES[at - 1]!.bed) cells.push([]);
    if (at === Math.floor(ROSES.length / 2)) cells.push(HEADINGS);
    if (at % 36 === 17) cells.push(...unreadable.splice(0, 1));
    cells.push(...linesOf(rose, at));
  }
  const planted = ROSES.reduce((sum, { count }) => sum + count, 0);
  cells.push([], [null, 'Total', null, null, null, planted + 3]);
  return { cells, merges: [{ row: 0, column: 0, rows: 1, columns: HEADINGS.length }] };
};
