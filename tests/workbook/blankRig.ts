import { rigForm } from '../../addin/workbook/sheets/rig';
import { readForm } from '../../addin/workbook/tables/readForm';

/** A rig of which nothing is known yet, in US measures. */
export const blankRig = readForm(rigForm, { sheets: [], names: {}, active: '', blocks: [] }, 'US').row;
