import { numberCell, optional, remarkCell, textCell } from '../fields/cellValue';
import { computed, defineTable, input } from '../tables/table';

/** The beds in the order of the walk, and where the barrel stands for each. */
export const bedsTable = defineTable({
  key: 'beds',
  name: 'Wandcount_Beds',
  title: 'Beds',
  purpose: 'The walk: beds in the order they are fed, and the station where the barrel stands for each.',
  place: 'garden',
  identity: ['bed'],
  reach: 500,
  columns: {
    walk: input({
      header: 'Walk order',
      width: 12,
      format: 'General',
      schema: optional(numberCell({})),
      note: 'Beds are fed from the least number to the greatest; beds without one come last.',
    }),
    bed: input({ header: 'Bed', width: 22, format: '@', schema: textCell('the name of a bed') }),
    station: input({
      header: 'Station',
      width: 14,
      format: '@',
      schema: remarkCell,
      note: 'Where the barrel stands for this bed. Beds with the same station are fed without moving it. Blank is the same as for the bed before in the walk.',
    }),
    plants: computed({
      header: 'Plants',
      width: 10,
      format: '0',
      formula: '=IF({bed}="","",SUMIFS({plants.howMany},{plants.bed},{bed}))',
    }),
    solution: computed({
      header: 'Solution',
      width: 11,
      format: '#,##0.0',
      note: 'For all plants of the bed, in the unit of the Doses sheet.',
      formula: '=IF({bed}="","",SUMIFS({plants.solution},{plants.bed},{bed}))',
    }),
    x: input({
      header: 'Position x',
      width: 12,
      format: '0.0#',
      schema: optional(numberCell({})),
      note: 'Where the bed lies on a plan of the garden, across; leave it blank if you have no plan.',
    }),
    y: input({
      header: 'Position y',
      width: 12,
      format: '0.0#',
      schema: optional(numberCell({})),
      note: 'Where the bed lies on a plan of the garden, upwards.',
    }),
  },
});
