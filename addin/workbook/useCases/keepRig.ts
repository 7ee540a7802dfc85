import type { System } from '../../core';
import type { Change } from '../change';
import type { Entry, RigSheet, TimedBuckets } from '../garden';
import type { Snapshot } from '../port';
import { timedBucketsTable } from '../sheets/timedBuckets';
import type { LineValue } from '../tables/form';
import { locateTable } from '../tables/site';
import type { FormWish } from '../tables/writeForm';
import type { TableWish } from '../tables/writeTable';
import { gardenChange } from './gardenChange';

const lineOf = (entry: Entry): LineValue => ({
  value: entry.value,
  ...(entry.unit === '' ? {} : { unit: entry.unit }),
});

const rigLines = (rig: RigSheet): FormWish => ({
  barrel: lineOf(rig.barrel),
  fillLine: { value: rig.fillLine },
  heel: lineOf(rig.heel),
  flow: lineOf(rig.flow),
  tapFlow: lineOf(rig.tapFlow),
  hoseLength: lineOf(rig.hoseLength),
  hoseBore: lineOf(rig.hoseBore),
  hoseHolds: lineOf(rig.hoseHolds),
  betweenPlants: { value: rig.betweenPlants },
  wandStaysOpen: { value: rig.wandStaysOpen },
  countStep: { value: rig.countStep },
  emptyWeight: lineOf(rig.emptyWeight),
  premixTime: { value: rig.premixTime },
  moveTime: { value: rig.moveTime },
});

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
  kept: { readonly rig: RigSheet; readonly timedBuckets: TimedBuckets },
  measures: System,
): Change =>
  gardenChange(snapshot, {
    title: 'Keep the rig',
    measures,
    forms: { rig: { ...rigLines(kept.rig), bucket: lineOf(kept.timedBuckets.bucket) } },
    tables: { timedBuckets: timesWish(snapshot, kept.timedBuckets.seconds) },
  });

/** Writes the timed buckets and lets the flow follow from them; the rest of the rig stays. */
export const keepTimedBuckets = (snapshot: Snapshot, kept: TimedBuckets, measures: System): Change =>
  gardenChange(snapshot, {
    title: 'Keep the timed buckets',
    measures,
    forms: { rig: { bucket: lineOf(kept.bucket), flow: { value: undefined } } },
    tables: { timedBuckets: timesWish(snapshot, kept.seconds) },
  });
