import { numberCell, optional, remarkCell, textCell } from '../fields/cellValue';
import { computed, defineTable, input } from '../tables/table';

const SERIAL_DAY = numberCell({ least: 1, most: 2_958_465 }, 'a date');

/** One line a round that was fed. It is a record: nothing rewrites it when the garden changes. */
export const feedLogTable = defineTable({
  key: 'feedLog',
  name: 'Wandcount_Feed_log',
  title: 'Feed log',
  purpose: 'One line for each round you fed. Lines are added below and never changed by the program.',
  place: 'round',
  identity: ['round'],
  reach: 2000,
  columns: {
    round: input({ header: 'Round', width: 8, format: '0', schema: numberCell({ least: 1, whole: true }) }),
    date: input({ header: 'Date', width: 12, format: 'yyyy-mm-dd', schema: SERIAL_DAY }),
    mix: input({ header: 'Mix', width: 22, format: '@', schema: remarkCell }),
    plants: input({ header: 'Plants', width: 9, format: '0', schema: numberCell({ least: 0, whole: true }) }),
    fills: input({ header: 'Fills', width: 7, format: '0', schema: numberCell({ least: 0, whole: true }) }),
    need: input({
      header: 'Planned',
      width: 10,
      format: '#,##0.0',
      schema: optional(numberCell({ least: 0 })),
      note: 'What the plan meant to pump out.',
    }),
    madeUp: input({
      header: 'Made up',
      width: 10,
      format: '#,##0.0',
      schema: numberCell({ least: 0 }),
      note: 'Water and products together.',
    }),
    leftOver: input({
      header: 'Left over',
      width: 10,
      format: '#,##0.0',
      schema: numberCell({ least: 0 }),
      note: 'What stayed in the barrel at the end of the round and at each move.',
    }),
    unit: input({ header: 'Unit', width: 8, format: '@', schema: textCell('a unit of volume') }),
    given: computed({
      header: 'Pumped out',
      width: 11,
      format: '#,##0.0',
      note: 'Made up less what was left over.',
      formula: '=IF({round}="","",{madeUp}-{leftOver})',
    }),
    share: computed({
      header: 'Of the plan',
      width: 11,
      format: '0 %',
      note: 'Pumped out against planned: under 100 %, the plants got less than their dose.',
      formula: '=IF(AND(ISNUMBER({given}),N({need})>0),{given}/{need},"")',
    }),
    cost: input({ header: 'Cost', width: 9, format: '#,##0.00', schema: optional(numberCell({ least: 0 })) }),
    start: input({ header: 'Start', width: 8, format: 'hh:mm', schema: optional(numberCell({ least: 0 })) }),
    finish: input({
      header: 'Done by',
      width: 9,
      format: 'hh:mm',
      schema: optional(numberCell({ least: 0 })),
    }),
    notes: input({ header: 'Notes', width: 40, schema: remarkCell }),
  },
});

/** One line for each product of each round in the log. */
export const productUseTable = defineTable({
  key: 'productUse',
  name: 'Wandcount_Product_use',
  title: 'Product use',
  purpose: 'How much of each product went into each round of the Feed log.',
  place: 'round',
  identity: ['round', 'product'],
  reach: 5000,
  columns: {
    round: input({ header: 'Round', width: 8, format: '0', schema: numberCell({ least: 1, whole: true }) }),
    date: input({ header: 'Date', width: 12, format: 'yyyy-mm-dd', schema: SERIAL_DAY }),
    product: input({ header: 'Product', width: 30, format: '@', schema: textCell('the name of a product') }),
    amount: input({ header: 'Amount', width: 11, format: '0.0##', schema: numberCell({ least: 0 }) }),
    unit: input({ header: 'Unit', width: 10, format: '@', schema: textCell('a unit of volume or mass') }),
    cost: input({ header: 'Cost', width: 9, format: '#,##0.00', schema: optional(numberCell({ least: 0 })) }),
  },
});
