import fc from 'fast-check';
import { expect, test, vi } from 'vitest';
import { proposeAdoption, readList, type ListCell } from '../../../addin/core';
import { adopt } from './adopted';

vi.setConfig({ testTimeout: 60_000 });

const oneOf = (...values: ListCell[]) => fc.constantFrom(...values);
const NAMES = [
  'Amber Kettle',
  'amber kettle',
  'Brass Lantern',
  'Copper Thimble',
  'Drift Bell',
  'Ember Wren',
  'Fallow Drum',
];
const BEDS = ['Front bed', 'FRONT BED', 'Patio pots', 'Row 3', 'Back'];

const row = fc.record({
  plant: oneOf(...NAMES),
  bed: oneOf(...BEDS),
  class: oneOf('HT', 'h.t.', 'Floribunda', 'mini', 'Cl', 'shrublet', null),
  pot: oneOf('pot', 'ground', null, 'x'),
  count: fc.oneof(fc.integer({ min: 1, max: 40 }), oneOf('x2', 'three', null)),
  year: oneOf(2011, 2014, null),
  source: oneOf('swap', 'show', null),
});
const KEYS = ['plant', 'bed', 'class', 'pot', 'count', 'year', 'source'] as const;
const HEADINGS = ['Variety', 'Bed', 'Class', 'Pot', 'How many', 'Year', 'Source'];
const rows = fc.array(row, { minLength: 8, maxLength: 60 });

const COUNTS: Readonly<Record<string, number>> = { x2: 2, three: 3 };
const planted = (count: ListCell): number =>
  count === null ? 1 : typeof count === 'number' ? count : COUNTS[count as string]!;

const anyCell: fc.Arbitrary<ListCell> = fc.oneof(
  { weight: 3, arbitrary: oneOf(null, '', ...NAMES, ...BEDS, 'HT', 'mini', 'Total', 'pot', '"') },
  { weight: 1, arbitrary: oneOf(...HEADINGS, 'Name', 'Plants', 'No.') },
  { weight: 1, arbitrary: fc.string({ unit: 'grapheme', maxLength: 30 }) },
  { weight: 1, arbitrary: fc.double() },
  { weight: 1, arbitrary: fc.integer({ min: -3, max: 50 }) },
  { weight: 1, arbitrary: fc.boolean() },
);
const merge = fc.record({
  row: fc.nat({ max: 30 }),
  column: fc.nat({ max: 8 }),
  rows: fc.integer({ min: 1, max: 5 }),
  columns: fc.integer({ min: 1, max: 5 }),
});

test('whatever a sheet holds, every row is in one group and no plant is counted twice', () => {
  fc.assert(
    fc.property(
      fc.array(fc.array(anyCell, { maxLength: 7 }), { maxLength: 30 }),
      fc.array(merge, { maxLength: 4 }),
      (cells, merges) => {
        const { inventory, proposal } = adopt(cells, {}, merges);
        const plants = inventory.plants.reduce((sum, { count }) => sum + count, 0);
        expect(inventory.beds.reduce((sum, bed) => sum + bed.plants, 0)).toBe(plants);
        expect(inventory.sizeClasses.reduce((sum, size) => sum + size.plants, 0)).toBe(plants);
        for (const { plant, bed, count } of inventory.plants) {
          expect(plant === '' || bed === '').toBe(false);
          expect(Number.isInteger(count) && count > 0).toBe(true);
        }
        for (const { sentence } of [...inventory.problems, ...proposal.problems])
          expect(sentence).toMatch(/^[\p{Lu}\d].*[.?]$/u);
      },
    ),
    { numRuns: 200 },
  );
});

test('the plants of a clean list are all counted, with a title or without, blank lines between or not', () => {
  fc.assert(
    fc.property(rows, fc.boolean(), fc.boolean(), (list, titled, spaced) => {
      const body = list.map((entry) => KEYS.map((key) => entry[key]));
      const cells = [
        ...(titled ? [['Our roses'], []] : []),
        HEADINGS,
        ...body.flatMap((cells) => (spaced ? [cells, []] : [cells])),
      ];
      const { inventory } = adopt(cells);
      expect(inventory.unread).toEqual([]);
      expect(inventory.plants.reduce((sum, { count }) => sum + count, 0)).toBe(
        list.reduce((sum, { count }) => sum + planted(count), 0),
      );
    }),
  );
});

test('columns in another order give the same plants', () => {
  fc.assert(
    fc.property(rows, fc.shuffledSubarray([...KEYS.keys()], { minLength: KEYS.length }), (list, order) => {
      const cells = [HEADINGS, ...list.map((entry) => KEYS.map((key) => entry[key]))];
      const shuffled = cells.map((cells) => order.map((at) => cells[at]!));
      const plain = ({ inventory }: ReturnType<typeof adopt>) =>
        inventory.plants.map(({ notes, ...plant }) => ({ ...plant, notes: notes.split('; ').sort() }));
      expect(plain(adopt(shuffled))).toEqual(plain(adopt(cells)));
    }),
  );
});

test('a row said twice is the row with twice the plants', () => {
  fc.assert(
    fc.property(rows, (list) => {
      const body = list.map((entry) => KEYS.map((key) => entry[key]));
      const once = adopt([HEADINGS, ...body]).inventory;
      const twice = adopt([HEADINGS, ...body.flatMap((cells) => [cells, cells])]).inventory;
      expect(twice.plants.map(({ count }) => count)).toEqual(once.plants.map(({ count }) => 2 * count));
    }),
  );
});

test('the same list gives the same inventory', () => {
  fc.assert(
    fc.property(rows, (list) => {
      const sheet = { cells: [HEADINGS, ...list.map((entry) => KEYS.map((key) => entry[key]))], merges: [] };
      expect(readList(sheet, proposeAdoption(sheet))).toEqual(readList(sheet, proposeAdoption(sheet)));
    }),
    { numRuns: 20 },
  );
});
