import { numberCell, optional, remarkCell } from '../fields/cellValue';
import { defineTable, input } from '../tables/table';

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
    seconds: input({
      header: 'Timed bucket, seconds',
      width: 14,
      format: '0.0#',
      schema: optional(numberCell({ above: 0, most: 3600 })),
      note: 'Fill the bucket at the wand at least three times and write the seconds of each, one below the other.',
    }),
    remark: input({ header: 'Remark', width: 24, schema: remarkCell }),
  },
});
