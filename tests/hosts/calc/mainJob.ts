import { copyFileSync, mkdtempSync } from 'node:fs';
import { join } from 'node:path';

import { root } from '../../../addin/build/paths.mjs';
import type { PaneEvent } from '../../../taskpane/view';
import type { Office } from './office';

const press = (action: string): PaneEvent => ({ kind: 'press', action });
const open = (section: string): PaneEvent => ({ kind: 'open', section });
const type = (fields: Readonly<Record<string, string>>): PaneEvent[] =>
  Object.entries(fields).map(([field, value]) => ({ kind: 'type', field, value }));

/** What a grower does in the pane from an untidy list to card, log and what-if. */
export const MAIN_JOB: readonly PaneEvent[] = [
  press('garden.adopt'),
  open('rig'),
  ...type({ 'rig.time.1': '45', 'rig.time.2': '47', 'rig.time.3': '46', 'rig.barrel': '60' }),
  press('rig.keep'),
  open('mix'),
  ...type({
    'product.new.name': 'Soluble powder 20-20-20',
    'product.new.greatestRate': '1',
    'product.new.N': '20',
    'product.new.P2O5': '20',
    'product.new.K2O': '20',
    'product.new.density': '0.9',
    'product.new.solubility': '450',
    'product.new.pack': '25',
    'product.new.price': '60',
  }),
  press('product.keep'),
  ...type({ 'mix.rate.1': '1' }),
  press('mix.keep'),
  open('round'),
  ...type({ 'round.date': '2026-05-03', 'round.start': '07:00' }),
  press('round.card'),
  open('log'),
  press('log.write'),
  open('tanks'),
  press('tanks.write'),
];

export const LIST = 'My roses';

/** A sample workbook that is kept in the repository. */
export const sample = (name: string): string => join(root, 'sample-workbooks', name);

/** The grower's untidy list, opened in Calc from the .ods that is kept. */
export const openList = async (office: Office, how: { readOnly?: boolean } = {}): Promise<string> => {
  // A file of its own: the office puts a lock beside what it opens.
  const path = join(mkdtempSync(join(office.folder, 'list-')), 'untidy-list.ods');
  copyFileSync(sample('untidy-list.ods'), path);
  return office.ask<string>({ do: 'open_document', path, ...how });
};
