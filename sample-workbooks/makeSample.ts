import { planRound, proposeAdoption, readList } from '../addin/core';
import { cardAreas } from '../addin/workbook/card/cardNames';
import { makeCard } from '../addin/workbook/card/makeCard';
import { readCard } from '../addin/workbook/card/readCard';
import type { Change } from '../addin/workbook/change';
import { logAreas, logRound } from '../addin/workbook/log/logRound';
import type { Snapshot, Workbook } from '../addin/workbook/port';
import { gardenAreas, readGarden } from '../addin/workbook/readGarden';
import { roundInput } from '../addin/workbook/roundInput';
import { tankSheet } from '../addin/workbook/tanks/tankSheet';
import { adoptList } from '../addin/workbook/useCases/adoptList';
import { keepBeds, keepDoses, keepSettings } from '../addin/workbook/useCases/keepDoses';
import { keepMix } from '../addin/workbook/useCases/keepMix';
import { keepRig } from '../addin/workbook/useCases/keepRig';
import { BEDS, DOSES, GARDEN, RIG } from './garden';
import { untidyList } from './untidyList';

const SEVEN = 7 * 3600;
/** Sundays in spring 2026, as serial days. */
const ROUNDS = [
  { date: 46_117, leftOver: 3, notes: 'first of the season' },
  { date: 46_131, leftOver: 5, notes: 'wind, walked fast' },
  { date: 46_145, leftOver: 3, notes: '' },
];

/** Makes the sample's sheets in a workbook whose formulas have their values. */
export const makeSample = (workbook: Workbook) => {
  const read = async (): Promise<Snapshot> => {
    const outline = await workbook.outline();
    return workbook.read([...gardenAreas(outline), ...cardAreas(outline), ...logAreas(outline)]);
  };
  const keep = async (change: (snapshot: Snapshot) => Change) => workbook.apply(change(await read()));
  const plan = (snapshot: Snapshot) => {
    const input = roundInput(readGarden(snapshot), { start: SEVEN });
    if (Array.isArray(input)) throw new Error(input.map(({ refused }) => refused).join(' '));
    const planned = planRound(input);
    if ('refused' in planned) throw new Error(planned.refused);
    return { input, plan: planned };
  };

  return {
    /** The garden with the card of its last round, and its log. */
    garden: async (): Promise<void> => {
      const list = untidyList();
      const { plants, beds } = readList(list, proposeAdoption(list));
      await keep((now) => adoptList(now, { plants, beds } as Parameters<typeof adoptList>[1], 'US').change);
      await keep((now) => keepSettings(now, { gardenName: GARDEN.name, grower: GARDEN.grower }, 'US'));
      await keep((now) =>
        keepBeds(
          now,
          BEDS.map(({ bed, station }, at) => ({ bed, station, walk: at + 1 })),
          'US',
        ),
      );
      await keep((now) => {
        const doses = Object.entries(DOSES).map(([sizeClass, dose]) => ({ sizeClass, dose }));
        return keepDoses(now, { unit: 'gal', doses }, 'US');
      });
      await keep((now) => {
        const { rig } = readGarden(now);
        const gallons = (value: number) => ({ value, unit: 'gal' });
        return keepRig(
          now,
          {
            rig: {
              ...rig,
              barrel: gallons(RIG.barrelGallons),
              heel: gallons(RIG.heelGallons),
              // Typed values give way to what the timed buckets, length and bore come to.
              flow: { unit: rig.flow.unit },
              bucket: gallons(RIG.bucketGallons),
              hoseHolds: { unit: rig.hoseHolds.unit },
            },
            timedBuckets: RIG.bucketSeconds,
          },
          'US',
        );
      });
      await keep((now) =>
        keepMix(
          now,
          {
            name: 'Bloom feed',
            products: [
              {
                name: 'Soluble powder 20-20-20',
                form: 'powder',
                density: 1.1,
                N: 20,
                P2O5: 20,
                K2O: 20,
                greatestRate: { value: 1, unit: 'tbsp/gal' },
                solubility: 400,
                pack: { value: 25, unit: 'lb' },
                price: 64,
              },
              {
                name: 'Fish and kelp liquid',
                form: 'liquid',
                density: 1.15,
                N: 2,
                greatestRate: { value: 2, unit: 'tbsp/gal' },
                pack: { value: 5, unit: 'gal' },
                price: 95,
              },
            ],
            mix: [
              { product: 'Soluble powder 20-20-20', rate: { value: 1, unit: 'tbsp/gal' } },
              { product: 'Fish and kelp liquid', rate: { value: 1, unit: 'tbsp/gal' } },
            ],
          },
          'US',
        ),
      );
      for (const { date, leftOver, notes } of ROUNDS) {
        await keep((now) => makeCard(now, readGarden(now), plan(now), { date, start: SEVEN, style: 'full' }));
        await keep((now) => {
          const card = readCard(now);
          if (!card) throw new Error('The card of the sample shows no figures.');
          return logRound(now, 'US', card, { date, leftOver, notes });
        });
      }
    },
    tanks: (): Promise<void> =>
      keep((now) =>
        tankSheet(
          now,
          {
            stations: plan(now).plan.stations.map(({ station }) => station),
            barrels: [30, 45, 60, 80, 100],
            limits: { fills: 5, weight: 700 },
            style: 'full',
            finding: 'A larger barrel takes fewer fills and less time for mixing, and weighs more.',
          },
          'US',
        ),
      ),
  };
};
