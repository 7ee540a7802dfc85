import type { System } from '../../core';
import type { Change } from '../change';
import type { Snapshot } from '../port';
import { gardenSheets } from '../sheets/gardenSheets';
import { placeSheets, type SheetWishes } from '../tables/buildSheets';
import { andList } from '../fields/holds';

/** What a workbook of the shape before lacks, or nothing. What the user has is neither moved nor lost. */
export interface Shape {
  readonly step: (snapshot: Snapshot, measures: System) => Change | undefined;
  /** True for what must not stand in a workbook of any shape, as one that an older program has worked on since. */
  readonly always?: true;
}

/**
 * A shape in which the garden's sheets have something more, or other formulas. A formula is renewed where it is still
 * the one that an earlier program wrote.
 */
export const sheetShape = ({ make, renew }: Pick<SheetWishes, 'make' | 'renew'>): Shape => ({
  step: (snapshot, measures) => {
    const { edits, made, renewed } = placeSheets(gardenSheets, snapshot, {
      measures,
      ...(make && { make }),
      ...(renew && { renew }),
    });
    if (edits.length === 0) return undefined;
    const says = [
      ...(made.length === 0 ? [] : [`Added what this program keeps besides: ${andList(made)}.`]),
      ...(renewed.length === 0 ? [] : [`Brought formulas up to date on ${andList(renewed)}.`]),
    ];
    return { title: 'Bring the sheets up to date', edits, says };
  },
});
