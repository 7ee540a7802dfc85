import { describe, expect, test } from 'vitest';
import {
  fewestFills,
  litres,
  proposeAdoption,
  readList,
  sizeClassFor,
  workingVolume,
} from '../../addin/core';
import { CLUB } from '../../sample-workbooks/club';
import { BEDS, DOSES, RIG, ROSES } from '../../sample-workbooks/garden';
import { UNREADABLE, untidyList } from '../../sample-workbooks/untidyList';
import { VARIETIES } from '../../sample-workbooks/varieties';

const GALLON = 3.785411784;
const sum = (numbers: readonly number[]) => numbers.reduce((total, n) => total + n, 0);
const stationOf = (bed: string) => BEDS.find((one) => one.bed === bed)!.station;
const doseOf = (rose: (typeof ROSES)[number]) => DOSES[sizeClassFor(rose)!]!;

describe('the sample garden', () => {
  test('has 350 roses in 14 beds at three stations, most of them large bushes and potted miniatures', () => {
    expect(sum(ROSES.map(({ count }) => count))).toBe(350);
    expect(new Set(ROSES.map(({ bed }) => bed))).toEqual(new Set(BEDS.map(({ bed }) => bed)));
    expect(BEDS).toHaveLength(14);
    expect(new Set(BEDS.map(({ station }) => station)).size).toBe(3);
    const main = ROSES.filter((rose) => ['Large bush', 'Potted miniature'].includes(sizeClassFor(rose)!));
    expect(sum(main.map(({ count }) => count))).toBeGreaterThan(0.85 * 350);
  });

  test('plants every variety that is named, each once in the list of names', () => {
    const named = Object.values(VARIETIES).map((names) => new Set(names).size);
    expect(named).toEqual(Object.values(VARIETIES).map((names) => names.length));
    for (const [roseClass, names] of Object.entries(VARIETIES))
      expect(
        new Set(ROSES.filter((rose) => rose.roseClass === roseClass).map(({ variety }) => variety)),
      ).toEqual(new Set(names));
  });

  // Common practice, no source: large bushes 15 to 20 s, potted miniatures 5 to 8 s, four fills of a 60 gal barrel,
  // some 90 minutes of pumping at about 2.6 gal/min.
  test('comes to four fills, station by station, and 80 to 95 minutes of pumping', () => {
    const flow = (RIG.bucketGallons * RIG.bucketSeconds.length * 60) / sum(RIG.bucketSeconds);
    expect(flow).toBeCloseTo(2.6, 2);
    expect((DOSES['Large bush']! / flow) * 60).toBeGreaterThan(15);
    expect((DOSES['Large bush']! / flow) * 60).toBeLessThan(20);
    expect((DOSES['Potted miniature']! / flow) * 60).toBeGreaterThan(5);
    expect((DOSES['Potted miniature']! / flow) * 60).toBeLessThan(8);

    const working = workingVolume(litres(RIG.barrelGallons * GALLON), litres(RIG.heelGallons * GALLON), 1);
    const stations = [...new Set(BEDS.map(({ station }) => station))];
    const needs = stations.map((station) =>
      sum(ROSES.filter(({ bed }) => stationOf(bed) === station).map((rose) => rose.count * doseOf(rose))),
    );
    expect(needs.map((need) => fewestFills(litres(need * GALLON), working))).toEqual([2, 1, 1]);
    expect(fewestFills(litres(sum(needs) * GALLON), working)).toBe(4);
    expect(sum(needs) / flow).toBeGreaterThan(80);
    expect(sum(needs) / flow).toBeLessThan(95);
  });

  test('has a club whose first member is the grower with as many roses', () => {
    expect(CLUB.members[0].roses).toBe(sum(ROSES.map(({ count }) => count)));
  });
});

describe('the untidy list', () => {
  const sheet = untidyList();
  const proposal = proposeAdoption(sheet);
  const inventory = readList(sheet, proposal);

  test('is the same on every run', () => expect(untidyList()).toEqual(sheet));

  test('shows what each column means without a question', () => {
    expect(proposal.outcome).toMatch(/^The headings stand in row 4; /);
    expect(proposal.problems).toEqual([]);
    expect(proposal.columns.map(({ meaning }) => meaning)).toEqual([
      'leftOut',
      'plant',
      'bed',
      'class',
      'pot',
      'count',
      'notes',
      'notes',
      'notes',
    ]);
  });

  test('gives the garden back, rose by rose', () => {
    const key = (plant: string, bed: string, roseClass: string, pot: boolean) =>
      [plant, bed, roseClass, pot].join('|').toLowerCase();
    const garden = new Map<string, number>();
    for (const { variety, bed, roseClass, pot, count } of ROSES) {
      const id = key(variety, bed, roseClass, pot);
      garden.set(id, (garden.get(id) ?? 0) + count);
    }
    const adopted = inventory.plants.map(({ plant, bed, roseClass, pot, count }): [string, number] => [
      key(plant, bed, roseClass, pot),
      count,
    ]);
    expect(new Map(adopted)).toEqual(garden);
    expect(inventory.beds.map(({ bed }) => bed)).toEqual(BEDS.map(({ bed }) => bed));
    expect(inventory.asked).toEqual([]);
  });

  test('lists the lines that cannot be read, and the total that no longer adds up', () => {
    expect(inventory.unread.map(({ text }) => text)).toEqual(
      UNREADABLE.map(({ cells }) => cells.filter((cell) => cell !== null && cell !== '').join(' | ')),
    );
    expect(inventory.problems.map(({ sentence }) => sentence)).toEqual([
      'The total in row 203 says 353; the rows above it that could be read come to 350.',
    ]);
  });
});
