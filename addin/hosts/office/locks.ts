import type { Edit } from '../../workbook/change';
import { touchedBy, type Locks } from '../../workbook/locks';

import type { BookAt } from './bookAt';
import type { KnownBook } from './read/readOutline';

/** Locks that stand in the way of the edits. */
export const locksOn = async (at: BookAt, book: KnownBook, edits: readonly Edit[]): Promise<Locks> => {
  const touched = touchedBy(edits);
  const { workbook } = at.context;
  workbook.load('readOnly');
  workbook.protection.load('protected');
  const sheets = touched.sheets
    .filter((name) => book.ids.has(name))
    .map((name) => {
      const { protection } = at.sheet(name);
      protection.load('protected');
      return { name, protection };
    });
  await at.context.sync();
  return {
    readOnly: touched.workbook && workbook.readOnly,
    structure: touched.structure && workbook.protection.protected,
    sheets: sheets.filter(({ protection }) => protection.protected).map(({ name }) => name),
  };
};
