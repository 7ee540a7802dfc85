import { choice, firstOf, number, remark } from '../fields/holds';
import { defineForm } from '../tables/form';

/** Workbook name of the cell that says which shape the sheets have. */
export const SHAPE_CELL = 'Wandcount_shape';

export const settingsForm = defineForm({
  key: 'settings',
  name: 'Wandcount_Settings',
  title: 'Settings',
  purpose: 'How this garden is called, and how it is measured.',
  place: 'garden',
  complete: false,
  lines: {
    gardenName: {
      name: 'Settings_garden',
      label: 'Garden',
      what: 'Its name on cards and in logs.',
      holds: remark,
    },
    grower: {
      name: 'Settings_grower',
      label: 'Grower',
      what: 'Your name in a log that you share with a club.',
      holds: remark,
    },
    measures: {
      name: 'Settings_measures',
      label: 'Measures',
      what: 'What new entries start with. Entries that are there already keep their own units.',
      holds: choice('US', 'metric', 'imperial'),
      start: { US: 'US', metric: 'metric', imperial: 'imperial' },
    },
    currency: {
      name: 'Settings_currency',
      label: 'Currency',
      what: 'Put before prices.',
      holds: remark,
      start: { US: '$', metric: '€', imperial: '£' },
    },
    fillStyle: {
      name: 'Settings_fills',
      label: 'Fills',
      what: 'full: full barrels and a short last one. equal: all the same size.',
      holds: firstOf('full', 'equal'),
      start: 'full',
    },
    shape: {
      name: SHAPE_CELL,
      label: 'Shape of the sheets',
      what: 'Counted up by the program when it keeps something new. Leave it as it is.',
      format: '0',
      holds: number({ least: 1, whole: true }),
    },
  },
});
