import { only } from '../../../workbook/change';
import { codeOf } from '../failures';

import { byPiece, type Prepare, type PutBack } from './prepared';
import { piece } from './piece';

/** Takes away the sheets that were added. One of a name that was taken may be somebody else's: it goes only if empty. */
const removeAdded =
  (added: readonly string[]): PutBack =>
  async ({ context }, cause) => {
    const nameTaken = codeOf(cause) === 'ItemAlreadyExists';
    const sheets = added.map((name) => {
      const sheet = context.workbook.worksheets.getItemOrNullObject(name);
      sheet.load('name');
      return sheet;
    });
    await context.sync();
    const there = sheets
      .filter(({ isNullObject }) => !isNullObject)
      .map((sheet) => {
        const used = sheet.getUsedRangeOrNullObject(true);
        used.load('address');
        return { sheet, used };
      });
    await context.sync();
    for (const { sheet, used } of there) if (!nameTaken || used.isNullObject) sheet.delete();
    await context.sync();
  };

/** New sheets. */
export const prepareSheets: Prepare = async ({ edits }) => {
  const added = only(edits, 'addSheet').map(({ sheet }) => sheet);
  return {
    pieces: added.map((sheet) => piece(1, ({ context }) => void context.workbook.worksheets.add(sheet))),
    putBack: added.length > 0 ? [removeAdded(added)] : [],
  };
};

/** The sheet in front and its selected cell: of several the last counts. */
export const prepareActive: Prepare = async ({ book, edits }) => ({
  pieces: only(edits, 'activate')
    .slice(-1)
    .map((edit) =>
      piece(2, (at) => {
        at.sheet(edit.sheet).activate();
        at.range({ ...edit, rows: 1, columns: 1 }).select();
      }),
    ),
  putBack: [byPiece(piece(1, (at) => at.sheet(book.active).activate()))],
});
