import type { System } from '../../core';
import { WorkbookError, type Snapshot } from '../port';
import { placeSheets, type BuiltSheets } from '../tables/buildSheets';
import { locateForm } from '../tables/formSite';
import { locateTable } from '../tables/site';
import { gardenSheets } from './gardenSheets';

/**
 * The garden's sheets for others to be built on: where everything stands, and the edits that put back columns, lines
 * and formulas that an earlier program did not make or the user took away.
 *
 * @param then what the user wanted, as the end of a sentence: 'make the card'
 * @throws WorkbookError where a whole sheet is not there
 */
export const standingSheets = (snapshot: Snapshot, measures: System, then: string): BuiltSheets => {
  const there = gardenSheets.sheets.every((entry) =>
    entry.kind === 'form' ? locateForm(entry.form, snapshot) : locateTable(entry.table, snapshot),
  );
  if (!there) {
    throw new WorkbookError(
      `A sheet of the garden is missing. Make the plant inventory again, which puts it back, then ${then}.`,
    );
  }
  return placeSheets(gardenSheets, snapshot, { measures });
};
