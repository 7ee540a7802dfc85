import { neededNumber, neededText, number, remark } from '../fields/holds';
import { defineTable } from '../tables/table';

const SERIAL_DAY = neededNumber({ least: 1, most: 2_958_465 }, 'a date');

/** A time of the day; past midnight it says so. */
const CLOCK = '[<1]hh:mm;[<2]hh:mm" next day";hh:mm" days later"';
/** Characters that the longest of them takes. */
export const DONE_BY_WIDTH = 16;

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
    round: { header: 'Round', width: 8, format: '0', holds: neededNumber({ least: 1, whole: true }) },
    date: { header: 'Date', width: 12, format: 'yyyy-mm-dd', holds: SERIAL_DAY },
    mix: { header: 'Mix', width: 22, format: '@', holds: remark },
    plants: { header: 'Plants', width: 9, format: '0', holds: neededNumber({ least: 0, whole: true }) },
    fills: { header: 'Fills', width: 7, format: '0', holds: neededNumber({ least: 0, whole: true }) },
    need: {
      header: 'Planned',
      width: 10,
      format: '#,##0.0',
      holds: number({ least: 0 }),
      note: 'What the plan meant to pump out.',
    },
    madeUp: {
      header: 'Made up',
      width: 10,
      format: '#,##0.0',
      holds: neededNumber({ least: 0 }),
      note: 'Water and products together.',
    },
    leftOver: {
      header: 'Left over',
      width: 10,
      format: '#,##0.0',
      holds: neededNumber({ least: 0 }),
      note: 'What stayed in the barrel at the end of the round and at each move.',
    },
    unit: { header: 'Unit', width: 8, format: '@', holds: neededText('a unit of volume') },
    given: {
      header: 'Pumped out',
      width: 11,
      format: '#,##0.0',
      note: 'Made up less what was left over.',
      formula: '=IF({round}="","",{madeUp}-{leftOver})',
    },
    share: {
      header: 'Of the plan',
      width: 11,
      format: '0 %',
      note: 'Pumped out against planned: under 100 %, the plants got less than their dose.',
      formula: '=IF(AND(ISNUMBER({given}),N({need})>0),{given}/{need},"")',
    },
    cost: { header: 'Cost', width: 9, format: '#,##0.00', holds: number({ least: 0 }) },
    start: { header: 'Start', width: 8, format: 'hh:mm', holds: number({ least: 0 }) },
    finish: {
      header: 'Done by',
      width: DONE_BY_WIDTH,
      format: CLOCK,
      holds: number({ least: 0 }),
    },
    notes: { header: 'Notes', width: 40, holds: remark },
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
    round: { header: 'Round', width: 8, format: '0', holds: neededNumber({ least: 1, whole: true }) },
    date: { header: 'Date', width: 12, format: 'yyyy-mm-dd', holds: SERIAL_DAY },
    product: { header: 'Product', width: 30, format: '@', holds: neededText('the name of a product') },
    amount: { header: 'Amount', width: 11, format: '0.0##', holds: neededNumber({ least: 0 }) },
    unit: { header: 'Unit', width: 10, format: '@', holds: neededText('a unit of volume or mass') },
    cost: { header: 'Cost', width: 9, format: '#,##0.00', holds: number({ least: 0 }) },
  },
});
