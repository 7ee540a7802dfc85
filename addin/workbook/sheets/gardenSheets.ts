import { type SheetSet } from '../tables/layOut';
import { bedsTable } from './beds';
import { dosesTable } from './doses';
import { mixTable } from './mix';
import { plantsTable } from './plants';
import { productsTable } from './products';
import { rigForm } from './rig';
import { settingsForm } from './settings';
import { timedBucketsTable } from './timedBuckets';

/** The sheets of a garden, in the order in which they are made. */
export const gardenSheets: SheetSet = {
  sheets: [
    { kind: 'table', table: plantsTable },
    { kind: 'table', table: bedsTable },
    { kind: 'table', table: dosesTable },
    { kind: 'form', form: rigForm },
    { kind: 'table', table: timedBucketsTable },
    { kind: 'table', table: productsTable },
    { kind: 'table', table: mixTable },
    { kind: 'form', form: settingsForm },
  ],
};
