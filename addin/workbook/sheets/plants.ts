import { choice, neededNumber, neededText, remark } from '../fields/holds';
import { defineTable } from '../tables/table';

/** The plant inventory: one line a plant, or several alike in one bed. */
export const plantsTable = defineTable({
  key: 'plants',
  name: 'Wandcount_Plants',
  title: 'Plants',
  purpose:
    'One line for each plant, or for several alike in one bed. Add lines below; your own columns stay as they are.',
  place: 'garden',
  identity: ['plant', 'bed', 'sizeClass', 'roseClass', 'place'],
  reach: 2000,
  columns: {
    plant: { header: 'Plant', width: 28, format: '@', holds: remark },
    bed: { header: 'Bed', width: 18, format: '@', holds: neededText('the name of a bed') },
    sizeClass: {
      header: 'Size class',
      width: 18,
      format: '@',
      holds: neededText('a size class of the Doses sheet'),
      list: {
        source: { table: 'doses', column: 'sizeClass' },
        message: 'Choose a size class of the Doses sheet. For a new one, add it there first.',
      },
    },
    howMany: {
      header: 'How many',
      width: 11,
      format: '0',
      holds: neededNumber({ least: 0, most: 100_000, whole: true }),
      note: 'Plants alike in this bed. 0 leaves the line out of the round.',
    },
    roseClass: { header: 'Class', width: 18, format: '@', holds: remark },
    place: {
      header: 'Pot or ground',
      width: 14,
      holds: choice('ground', 'pot'),
    },
    dose: {
      header: 'Dose',
      width: 11,
      format: '0.0##',
      note: 'For one plant, in the unit of the Doses sheet. It follows the size class; change it there.',
      formula: '=IF(ISNUMBER({dosesRow}),INDEX({doses.used},{dosesRow}),{dosesRow})',
    },
    seconds: {
      header: 'Seconds',
      width: 10,
      format: 'General',
      note: 'How long the wand stays on one plant.',
      formula: '=IF(ISNUMBER({dose}),INDEX({doses.seconds},{dosesRow}),"")',
    },
    solution: {
      header: 'Solution',
      width: 11,
      format: '#,##0.0#',
      note: 'For all plants of the line, in the unit of the Doses sheet.',
      // A text in place of a dose is an error here, so that no bed is sized without its plants.
      formula: '=IF({dosesRow}="","",FEED.NEED({howMany},{dose},{Doses_unit},{Doses_unit}))',
    },
    notes: { header: 'Notes', width: 40, holds: remark },
    dosesRow: {
      header: 'Row of Doses',
      width: 9,
      format: '0',
      note: "The size's place on the Doses sheet, for the columns before.",
      formula: '=IF({plant}&{sizeClass}="","",IFERROR(MATCH({sizeClass},{doses.sizeClass},0),"no dose"))',
    },
  },
});
