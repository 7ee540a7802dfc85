import type { System } from '../../core';
import type { Change } from '../change';
import type { Entry } from '../fields/holds';
import type { Garden } from '../garden';
import type { Snapshot } from '../port';
import { rigForm } from '../sheets/rig';
import { timedBucketsTable } from '../sheets/timedBuckets';
import { lineValues } from '../tables/form';
import { locateTable } from '../tables/site';
import type { TableWish } from '../tables/writeTable';
import { gardenChange } from './gardenChange';

/** The times take the first rows of their table; times below them are taken out, remarks stay. */
const timesWish = (snapshot: Snapshot, times: readonly number[]): TableWish => {
  const site = locateTable(timedBucketsTable, snapshot);
  if (!site) return { add: times.map((seconds) => ({ seconds })) };
  const first = site.header + 1;
  const kept = times.map((seconds, index) => ({ row: first + index, key: 'seconds', value: seconds }));
  const gone = site.rows
    .filter((row) => row >= first + times.length)
    .map((row) => ({ row, key: 'seconds', value: undefined }));
  return { cells: [...kept, ...gone] };
};

/**
 * Writes the rig as given: a value left out is emptied, and a flow or hose content left out is worked out by the
 * sheet again.
 */
export const keepRig = (
  snapshot: Snapshot,
  kept: Pick<Garden, 'rig' | 'timedBuckets'>,
  measures: System,
): Change =>
  gardenChange(snapshot, {
    title: 'Keep the rig',
    measures,
    forms: { rig: lineValues(rigForm, kept.rig) },
    tables: { timedBuckets: timesWish(snapshot, kept.timedBuckets) },
  });

/** Writes the timed buckets and lets the flow follow from them; the rest of the rig stays. */
export const keepTimedBuckets = (
  snapshot: Snapshot,
  { bucket, seconds }: { readonly bucket: Entry; readonly seconds: readonly number[] },
  measures: System,
): Change =>
  gardenChange(snapshot, {
    title: 'Keep the timed buckets',
    measures,
    forms: { rig: { ...lineValues(rigForm, { bucket }), flow: { value: undefined } } },
    tables: { timedBuckets: timesWish(snapshot, seconds) },
  });
