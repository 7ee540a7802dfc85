import type { Inventory, ListSheet, Proposal } from './adoption';
import { cellText } from './cellText';
import { takeInventory } from './inventory';
import { ownTexts, readRows, shownRow, type ListRows } from './listRows';
import { mergedCells } from './mergedCells';

const NOTHING_READ: ListRows = {
  plantRows: [],
  unread: [],
  sections: [],
  totals: [],
  readings: [],
  headers: 0,
  blank: 0,
};

/** The answer of work that comes in steps, done without a pause. */
export const finished = <Answer>(steps: Generator<undefined, Answer>): Answer => {
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
  }
};

/**
 * Reads a list as `readList` does, with pauses in which a host may do what has come up: a long list takes a second.
 *
 * @param sheet the same cells that were proposed on
 * @param proposal from `proposeAdoption`
 * @returns steps whose last gives the inventory
 */
export const readListInSteps = function* (
  sheet: ListSheet,
  proposal: Proposal,
): Generator<undefined, Inventory> {
  const start = proposal.dataRows?.first ?? sheet.cells.length;
  const headers = new Set(proposal.headerRows);
  let titles = 0;
  let blank = 0;
  for (let row = 0; row < start; row++) {
    if (headers.has(row)) continue;
    if (sheet.cells[row]!.some((cell) => cellText(cell) !== '')) titles++;
    else blank++;
  }
  const rows = proposal.dataRows ? yield* readRows(sheet, proposal) : NOTHING_READ;
  const merged = mergedCells(sheet);
  const alone = rows.sections
    .filter((section) => !section.followed)
    .map(({ row }) => ({
      row,
      reason: 'it stands alone: no roses follow under it',
      text: shownRow(ownTexts(sheet, merged, row).texts),
    }));
  const unread = [...rows.unread, ...alone].sort((a, b) => a.row - b.row);
  const sections = rows.sections.filter((section) => section.followed).map(({ row, bed }) => ({ row, bed }));
  const inventory = yield* takeInventory(rows, proposal.sizeClasses, {
    unread,
    sections,
    tally: {
      rows: sheet.cells.length,
      plants: rows.plantRows.length,
      titles,
      headers: headers.size + rows.headers,
      blank: blank + rows.blank,
      sections: sections.length,
      totals: rows.totals.length,
      unread: unread.length,
    },
  });
  const stop = proposal.problems.find((problem) => problem.kind === 'stop');
  return stop ? { ...inventory, outcome: stop.sentence, problems: [stop] } : inventory;
};

/**
 * Reads a list as proposed: plants added up by plant, bed, class, size class and pot; the beds in the order in
 * which they first appear; every row that could not be read with the reason.
 *
 * @param sheet the same cells that were proposed on
 * @param proposal from `proposeAdoption`
 * @returns an inventory whose tally sums to the sheet's rows; one without plants where the proposal stops
 * Source: how growers write their lists; common practice, nothing published.
 * @example readList(sheet, proposeAdoption(sheet)).outcome
 *   // '348 roses in 14 beds, read from 201 of 230 rows; 6 rows could not be read.'
 */
export const readList = (sheet: ListSheet, proposal: Proposal): Inventory =>
  finished(readListInSteps(sheet, proposal));
