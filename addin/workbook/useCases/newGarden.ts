import type { System } from '../../core';
import type { Change } from '../change';
import type { Snapshot } from '../port';
import { gardenChange } from './gardenChange';

/**
 * Makes the sheets of a garden, empty but for common-practice doses and what a rig starts with; sheets that are
 * there already stay as they are.
 */
export const newGarden = (snapshot: Snapshot, measures: System): Change =>
  gardenChange(snapshot, { title: 'Start a garden', measures, show: 'plants' });
