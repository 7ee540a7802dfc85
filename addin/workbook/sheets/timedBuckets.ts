import { number, remark } from '../fields/holds';
import { defineTable } from '../tables/table';

/** Seconds that the bucket of the rig took to fill, a line each time. */
export const timedBucketsTable = defineTable({
  key: 'timedBuckets',
  name: 'Wandcount_Timed_buckets',
  title: 'Rig',
  purpose: '',
  place: 'rig',
  beside: 'rig',
  identity: [],
  reach: 60,
  columns: {
    seconds: {
      header: 'Timed bucket, seconds',
      width: 14,
      format: '0.0#',
      holds: number({ above: 0, most: 3600 }),
      ask: { label: 'Time', under: 'Timed bucket', unit: 's' },
      note: 'Fill the bucket at the wand at least three times and write the seconds of each, one below the other.',
    },
    remark: { header: 'Remark', width: 24, holds: remark },
  },
});
