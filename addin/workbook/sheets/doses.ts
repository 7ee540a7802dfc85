import { neededText, neededUnit, number } from '../fields/holds';
import { defineTable } from '../tables/table';

const FLOW_KNOWN = 'AND(ISNUMBER({dose}),ISNUMBER({Rig_flow}))';

/** Finished solution for one plant of each size class, and the count that gives it. */
export const dosesTable = defineTable({
  key: 'doses',
  name: 'Wandcount_Doses',
  title: 'Doses',
  purpose:
    'Finished solution for one plant of each size class, and how long to hold the wand. The doses that stand here at the start are common practice; change them to your own.',
  place: 'doses',
  heads: [
    {
      key: 'unit',
      label: 'Doses are in',
      name: 'Doses_unit',
      holds: neededUnit('dose'),
      list: ['gal', 'qt', 'pt', 'cup', 'L', 'mL', 'imp gal', 'imp pt'],
      message: 'Choose a unit of volume. The numbers below are not converted.',
    },
  ],
  identity: ['sizeClass'],
  reach: 200,
  columns: {
    sizeClass: {
      header: 'Size class',
      width: 20,
      format: '@',
      holds: neededText('the name of a size class'),
    },
    dose: {
      header: 'Dose',
      width: 10,
      format: '0.0##',
      holds: number({ above: 0 }),
      ask: { label: 'Dose for one {sizeClass}', under: '' },
      note: 'For one plant. Sizes that have plants and no dose cannot be planned.',
    },
    unit: {
      header: 'Unit',
      width: 9,
      formula: '=IF({sizeClass}="","",{Doses_unit})',
    },
    seconds: {
      header: 'Seconds',
      width: 10,
      format: 'General',
      note: 'Dose ÷ flow at the wand, to a whole count of the rig. Blank until the flow is known.',
      formula: `=IF(${FLOW_KNOWN},FEED.SECONDS({dose},{Doses_unit},{Rig_flow},{Rig_flow_unit},{Rig_count_step}),"")`,
    },
    gives: {
      header: 'Gives',
      width: 10,
      format: '0.0##',
      note: 'What that count really gives.',
      formula: '=IF(ISNUMBER({seconds}),FEED.DOSE({seconds},{Rig_flow},{Rig_flow_unit},{Doses_unit}),"")',
    },
    plants: {
      header: 'Plants',
      width: 10,
      format: '0',
      formula: '=IF({sizeClass}="","",SUMIFS({plants.howMany},{plants.sizeClass},{sizeClass}))',
    },
    used: {
      header: 'Dose for Plants',
      width: 10,
      format: '0.0##',
      note: 'The dose, where there is one: what the Plants sheet takes.',
      formula: '=IF(AND(ISNUMBER({dose}),{dose}>0),{dose},"no dose")',
    },
  },
});
