import type { System } from '../../core';
import type { Change } from '../change';
import type { Snapshot } from '../port';
import { gardenSheets } from '../sheets/gardenSheets';
import { logSheets } from '../log/logRound';
import { areasOf } from '../readGarden';
import { placeSheets } from '../tables/buildSheets';
import type { SheetWishes } from '../tables/layOut';
import { andList } from '../fields/holds';

/** What a workbook of the shape before lacks, or nothing. What the user has is neither moved nor lost. */
export interface Shape {
  readonly step: (snapshot: Snapshot, measures: System) => Change | undefined;
  /** True for what must not stand in a workbook of any shape, as one that an older program has worked on since. */
  readonly always?: true;
}

/**
 * A shape in which the sheets of the garden or the log have something more, or other formulas. A formula is renewed where it is still
 * the one that an earlier program wrote.
 */
export const sheetShape = ({ make, renew }: Pick<SheetWishes, 'make' | 'renew'>): Shape => ({
  step: (snapshot, measures) => {
    const sets = [gardenSheets, logSheets].filter((set) => areasOf(set, snapshot).length > 0);
    const wishes = { measures, ...(make && { make }), ...(renew && { renew }) };
    const built = sets.map((set) => placeSheets(set, snapshot, wishes));
    const [edits, made, renewed] = [
      built.flatMap((one) => one.edits),
      built.flatMap((one) => one.made),
      built.flatMap((one) => one.renewed),
    ];
    if (edits.length === 0) return undefined;
    const says = [
      ...(made.length === 0 ? [] : [`Added what this program keeps besides: ${andList(made)}.`]),
      ...(renewed.length === 0 ? [] : [`Brought formulas up to date on ${andList(renewed)}.`]),
    ];
    return { title: 'Bring the sheets up to date', edits, says };
  },
});
