import { choiceCell, numberCell, optional, remarkCell, textCell } from '../fields/cellValue';
import { computed, defineTable, input } from '../tables/table';

const INDEX_DOSE = 'INDEX({doses.dose},MATCH({sizeClass},{doses.sizeClass},0))';
const INDEX_SECONDS = 'INDEX({doses.seconds},MATCH({sizeClass},{doses.sizeClass},0))';

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
    plant: input({ header: 'Plant', width: 28, format: '@', schema: remarkCell }),
    bed: input({ header: 'Bed', width: 18, format: '@', schema: textCell('the name of a bed') }),
    sizeClass: input({
      header: 'Size class',
      width: 18,
      format: '@',
      schema: textCell('a size class of the Doses sheet'),
      list: {
        source: { table: 'doses', column: 'sizeClass' },
        message: 'Choose a size class of the Doses sheet. For a new one, add it there first.',
      },
    }),
    howMany: input({
      header: 'How many',
      width: 11,
      format: '0',
      schema: numberCell({ least: 0, most: 100_000, whole: true }),
      note: 'Plants alike in this bed. 0 leaves the line out of the round.',
    }),
    roseClass: input({ header: 'Class', width: 18, format: '@', schema: remarkCell }),
    place: input({
      header: 'Pot or ground',
      width: 14,
      schema: optional(choiceCell(['pot', 'ground'])),
      list: { source: ['ground', 'pot'], message: 'Choose ground or pot.' },
    }),
    dose: computed({
      header: 'Dose',
      width: 11,
      format: '0.0##',
      note: 'For one plant, in the unit of the Doses sheet. It follows the size class; change it there.',
      formula: `=IF(AND({plant}="",{sizeClass}=""),"",IFERROR(IF(${INDEX_DOSE}>0,${INDEX_DOSE},"no dose"),"no dose"))`,
    }),
    seconds: computed({
      header: 'Seconds',
      width: 10,
      format: 'General',
      note: 'How long the wand stays on one plant.',
      formula: `=IF(ISNUMBER({dose}),${INDEX_SECONDS},"")`,
    }),
    solution: computed({
      header: 'Solution',
      width: 11,
      format: '#,##0.0#',
      note: 'For all plants of the line, in the unit of the Doses sheet.',
      formula:
        '=IF(AND({plant}="",{sizeClass}=""),"",IF(ISNUMBER({dose}),FEED.NEED({howMany},{dose},{Doses_unit},{Doses_unit}),NA()))',
    }),
    notes: input({ header: 'Notes', width: 40, schema: remarkCell }),
  },
});
