import type { ICellData } from '@univerjs/core';

import type { BookData } from './bookData';
import { breathe } from './breathe';
import type { OpenBook } from './openGrid';

type Rows = Record<number, Record<number, ICellData>>;

/** Rows that are looked through at one go. */
const AT_ONCE = 5_000;

const isPlain = (line: Record<number, ICellData>): boolean => {
  for (const column in line) if (line[column]?.f || line[column]?.si) return false;
  return true;
};

/**
 * Takes the rows without a formula out of a workbook that is to be opened. The grid looks through every cell that it
 * begins with for formulas, at one go; what comes later is only shown.
 *
 * @returns the workbook with the other rows, and what puts these ones into it once it is open
 */
export const plainRowsApart = async (
  data: BookData,
): Promise<{ readonly rest: BookData; readonly putIn: (book: OpenBook) => void }> => {
  const apart = new Map<string, Rows>();
  const sheets: BookData['sheets'] = {};
  let seen = 0;
  for (const [id, sheet] of Object.entries(data.sheets)) {
    const [plain, others]: [Rows, Rows] = [{}, {}];
    const rows = (sheet.cellData ?? {}) as Rows;
    for (const row in rows) {
      const line = rows[row] ?? {};
      (isPlain(line) ? plain : others)[row] = line;
      seen += 1;
      if (seen % AT_ONCE === 0) await breathe();
    }
    apart.set(id, plain);
    sheets[id] = { ...sheet, cellData: others };
  }
  return {
    rest: { ...data, sheets },
    putIn: (book) => {
      for (const [id, plain] of apart)
        Object.assign(book.getSheetBySheetId(id)?.getSheet().getCellMatrix().getMatrix() ?? {}, plain);
    },
  };
};
