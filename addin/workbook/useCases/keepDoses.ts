import type { System } from '../../core';
import type { Change } from '../change';
import type { Bed, Dose, Settings } from '../garden';
import type { Snapshot } from '../port';
import { bedsTable } from '../sheets/beds';
import { dosesTable } from '../sheets/doses';
import { settingsForm } from '../sheets/settings';
import { lineValues } from '../tables/form';
import { rowCells, wholeRow } from '../tables/table';
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
        set: kept.doses.map((dose) => wholeRow(dosesTable, dose)),
        ...(kept.unit === undefined ? {} : { heads: { unit: kept.unit } }),
      },
    },
  });

/** Writes what is given of the beds that are named. */
export const keepBeds = (
  snapshot: Snapshot,
  beds: readonly (Pick<Bed, 'bed'> & Partial<Bed>)[],
  measures: System,
): Change =>
  gardenChange(snapshot, {
    title: 'Keep the walk',
    measures,
    tables: { beds: { set: beds.map((bed) => rowCells(bedsTable, bed)) } },
  });

/** Writes the settings that are given. */
export const keepSettings = (snapshot: Snapshot, kept: Partial<Settings>, measures: System): Change =>
  gardenChange(snapshot, {
    title: 'Keep the settings',
    measures: kept.measures ?? measures,
    forms: { settings: lineValues(settingsForm, kept) },
  });
