import type { System } from '../../core';
import type { Change } from '../change';
import type { Bed, Dose, Settings } from '../garden';
import type { Snapshot } from '../port';
import { gardenChange } from './gardenChange';

/** Writes doses; size classes that are not named keep theirs. The numbers are in the unit, which is not converted. */
export const keepDoses = (
  snapshot: Snapshot,
  kept: { readonly unit?: string; readonly doses: readonly Omit<Dose, 'row'>[] },
  measures: System,
): Change =>
  gardenChange(snapshot, {
    title: 'Keep the doses',
    measures,
    tables: {
      doses: {
        set: kept.doses.map(({ sizeClass, dose }) => ({ sizeClass, dose })),
        ...(kept.unit === undefined ? {} : { heads: { unit: kept.unit } }),
      },
    },
  });

/** Writes the walk: place and station of the beds that are named. */
export const keepBeds = (
  snapshot: Snapshot,
  beds: readonly Pick<Bed, 'bed' | 'walk' | 'station'>[],
  measures: System,
): Change =>
  gardenChange(snapshot, {
    title: 'Keep the walk',
    measures,
    tables: { beds: { set: beds.map(({ bed, walk, station }) => ({ bed, walk, station })) } },
  });

/** Writes the settings that are given. */
export const keepSettings = (snapshot: Snapshot, kept: Partial<Settings>, measures: System): Change =>
  gardenChange(snapshot, {
    title: 'Keep the settings',
    measures: kept.measures ?? measures,
    forms: {
      settings: Object.fromEntries(Object.entries(kept).map(([key, value]) => [key, { value }])),
    },
  });
