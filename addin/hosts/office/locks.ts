import type { Edit } from '../../workbook/change';
import { WorkbookError } from '../../workbook/port';

import type { BookAt } from './bookAt';
import type { KnownBook } from './read/readOutline';
import { changedSheets } from './write/touched';

const READ_ONLY =
  'This workbook is open for reading only. Open it for editing, or save a copy and open that, then try again.';
const NO_NEW_SHEETS =
  "The workbook's structure is protected, so no sheet can be added. Take the protection off, then try again.";

const isProtected = (names: readonly string[]): string =>
  names.length === 1
    ? `The sheet “${names[0]}” is protected. Take the protection off, then try again.`
    : `The sheets ${names.map((name) => `“${name}”`).join(', ')} are protected. Take the protection off, then try again.`;

/**
 * Refuses a change that the workbook would not take, before anything of it is written.
 *
 * @throws WorkbookError that says which lock it is and what to do
 */
export const refuseWhereLocked = async (
  at: BookAt,
  book: KnownBook,
  edits: readonly Edit[],
): Promise<void> => {
  const { workbook } = at.context;
  workbook.load('readOnly');
  workbook.protection.load('protected');
  const sheets = changedSheets(edits)
    .filter((name) => book.ids.has(name))
    .map((name) => {
      const { protection } = at.sheet(name);
      protection.load('protected');
      return { name, protection };
    });
  await at.context.sync();
  if (workbook.readOnly) throw new WorkbookError(READ_ONLY);
  if (workbook.protection.protected && edits.some(({ kind }) => kind === 'addSheet'))
    throw new WorkbookError(NO_NEW_SHEETS);
  const locked = sheets.filter(({ protection }) => protection.protected).map(({ name }) => name);
  if (locked.length > 0) throw new WorkbookError(isProtected(locked));
};
