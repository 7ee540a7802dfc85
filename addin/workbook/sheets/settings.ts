import type { System } from '../../core';
import { choiceCell, optional, remarkCell } from '../fields/cellValue';
import type { Form, Line } from '../tables/form';
import { CURRENCY } from './defaults';

const always = (value: string): Line['start'] => ({ US: { value }, metric: { value }, imperial: { value } });
const own = (values: Readonly<Record<System, string>>): Line['start'] => ({
  US: { value: values.US },
  metric: { value: values.metric },
  imperial: { value: values.imperial },
});

export const settingsForm = {
  key: 'settings',
  name: 'Wandcount_Settings',
  title: 'Settings',
  purpose: 'How this garden is called, and how it is measured.',
  place: 'garden',
  complete: false,
  lines: [
    {
      key: 'gardenName',
      name: 'Settings_garden',
      label: 'Garden',
      what: 'Its name on cards and in logs.',
      schema: remarkCell,
    },
    {
      key: 'grower',
      name: 'Settings_grower',
      label: 'Grower',
      what: 'Your name in a log that you share with a club.',
      schema: remarkCell,
    },
    {
      key: 'measures',
      name: 'Settings_measures',
      label: 'Measures',
      what: 'What new entries start with. Entries that are there already keep their own units.',
      schema: optional(choiceCell(['US', 'metric', 'imperial'], 'US, metric or imperial')),
      list: ['US', 'metric', 'imperial'],
      start: own({ US: 'US', metric: 'metric', imperial: 'imperial' }),
    },
    {
      key: 'currency',
      name: 'Settings_currency',
      label: 'Currency',
      what: 'Put before prices.',
      schema: remarkCell,
      start: own(CURRENCY),
    },
    {
      key: 'fillStyle',
      name: 'Settings_fills',
      label: 'Fills',
      what: 'full: full barrels and a short last one. equal: all the same size.',
      schema: optional(choiceCell(['full', 'equal'])),
      list: ['full', 'equal'],
      start: always('full'),
    },
  ],
} as const satisfies Form;
