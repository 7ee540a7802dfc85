import { neededText, number, remark } from '../fields/holds';
import { defineTable } from '../tables/table';

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
    walk: {
      header: 'Walk order',
      width: 12,
      format: 'General',
      holds: number(),
      ask: { label: 'Place of {bed} in the walk', under: '' },
      note: 'Beds are fed from the least number to the greatest; beds without one come last.',
    },
    bed: { header: 'Bed', width: 22, format: '@', holds: neededText('the name of a bed') },
    station: {
      header: 'Station',
      width: 14,
      format: '@',
      holds: remark,
      ask: { label: 'Station for {bed}', under: '' },
      note: 'Where the barrel stands for this bed. Beds with the same station are fed without moving it. Blank is the same as for the bed before in the walk.',
    },
    plants: {
      header: 'Plants',
      width: 10,
      format: '0',
      formula: '=IF({bed}="","",SUMIFS({plants.howMany},{plants.bed},{bed}))',
    },
    solution: {
      header: 'Solution',
      width: 11,
      format: '#,##0.0',
      note: 'For all plants of the bed, in the unit of the Doses sheet.',
      formula: '=IF({bed}="","",SUMIFS({plants.solution},{plants.bed},{bed}))',
    },
    x: {
      header: 'Position x',
      width: 12,
      format: '0.0#',
      holds: number(),
      note: 'Where the bed lies on a plan of the garden, across; leave it blank if you have no plan.',
    },
    y: {
      header: 'Position y',
      width: 12,
      format: '0.0#',
      holds: number(),
      note: 'Where the bed lies on a plan of the garden, upwards.',
    },
  },
});
