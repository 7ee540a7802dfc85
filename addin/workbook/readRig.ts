import type { System } from '../core';
import type { Entry, RigSheet } from './garden';
import { rigForm } from './sheets/rig';
import type { Line, LineValue } from './tables/form';

type Values = Readonly<Record<string, LineValue>>;

/** A line with its unit; while the sheet has none, the unit that a new sheet would start with. */
export const rigEntry = (values: Values, key: string, measures: System): Entry => {
  const line: Line | undefined = rigForm.lines.find((one) => one.key === key);
  const start: { readonly unit?: string } | undefined = line?.start?.[measures];
  const unit = values[key]?.unit ?? start?.unit ?? '';
  const value = values[key]?.value;
  return typeof value === 'number' ? { value, unit } : { unit };
};

/** The lines of the rig, in the user's units. */
export const readRig = (values: Values, measures: System): RigSheet => {
  const number = <Key extends string>(key: Key) => {
    const value = values[key]?.value;
    return (typeof value === 'number' ? { [key]: value } : {}) as { readonly [K in Key]?: number };
  };
  const open = values['wandStaysOpen']?.value;
  return {
    barrel: rigEntry(values, 'barrel', measures),
    heel: rigEntry(values, 'heel', measures),
    hoseLength: rigEntry(values, 'hoseLength', measures),
    hoseBore: rigEntry(values, 'hoseBore', measures),
    hoseHolds: rigEntry(values, 'hoseHolds', measures),
    flow: rigEntry(values, 'flow', measures),
    tapFlow: rigEntry(values, 'tapFlow', measures),
    emptyWeight: rigEntry(values, 'emptyWeight', measures),
    ...number('fillLine'),
    ...number('betweenPlants'),
    ...number('countStep'),
    ...number('premixTime'),
    ...number('moveTime'),
    ...(typeof open === 'boolean' ? { wandStaysOpen: open } : {}),
  };
};
