import { only, type Edit } from '../../../workbook/change';
import { GRID } from '../../../workbook/validateChange';
import type { BookAt } from '../bookAt';

import { byPiece, type Prepare } from './prepared';
import { piece, type Piece } from './piece';

type Freeze = Extract<Edit, { kind: 'freeze' }>;

const setFreeze = ({ sheet: name, rows, columns }: Freeze): Piece =>
  piece(4, (at) => {
    const sheet = at.sheet(name);
    const { freezePanes } = sheet;
    freezePanes.unfreeze();
    if (rows > 0 && columns > 0) freezePanes.freezeAt(sheet.getRangeByIndexes(0, 0, rows, columns));
    else if (rows > 0) freezePanes.freezeRows(rows);
    else if (columns > 0) freezePanes.freezeColumns(columns);
  });

const freezesOf = async (at: BookAt, sheets: readonly string[]): Promise<Freeze[]> => {
  if (sheets.length === 0) return [];
  const told = sheets.map((sheet) => {
    const location = at.sheet(sheet).freezePanes.getLocationOrNullObject();
    location.load('rowCount,columnCount');
    return { sheet, location };
  });
  await at.context.sync();
  return told.map(({ sheet, location }) => {
    // Rows alone are frozen over all columns, and columns alone over all rows.
    const rows = location.isNullObject || location.rowCount >= GRID.rows ? 0 : location.rowCount;
    const columns = location.isNullObject || location.columnCount >= GRID.columns ? 0 : location.columnCount;
    return { kind: 'freeze', sheet, rows, columns };
  });
};

/** First rows and columns that stay in sight. */
export const prepareFreezes: Prepare = async ({ at, edits, over }) => {
  const sheets = new Set(only(over, 'freeze').map(({ sheet }) => sheet));
  const before = await freezesOf(at, [...sheets]);
  return { pieces: only(edits, 'freeze').map(setFreeze), putBack: before.map(setFreeze).map(byPiece) };
};
