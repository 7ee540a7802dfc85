import type { System } from '../../core';
import type { Change } from '../change';
import type { Snapshot } from '../port';
import { gardenChange } from './gardenChange';

/** Makes the sheets of a garden, empty but for common-practice doses and what a rig starts with. */
export const newGarden = (snapshot: Snapshot, measures: System): Change =>
  gardenChange(snapshot, { title: 'Start a garden', measures, whole: true, show: 'plants' });

/** Puts back sheets, columns and lines that were deleted, each with what a new one starts with. */
export const restoreSheets = (snapshot: Snapshot, measures: System): Change =>
  gardenChange(snapshot, { title: 'Put back what is missing', measures, whole: true });
