import type { IWorkbookData, IWorksheetData } from '@univerjs/core';

import { ENGLISH } from './kept';

/** A workbook as the grid keeps it. */
export type BookData = IWorkbookData;
export type SheetData = Partial<IWorksheetData> & Pick<IWorksheetData, 'id' | 'name'>;

/** A sheet starts with this many rows and columns and grows with what is written. */
export const FRESH_SHEET = { rowCount: 200, columnCount: 26 } as const;

let made = 0;
/** Ids are never used twice in a page: the grid keeps state by them past the closing of a book. */
export const freshId = (kind: string): string => {
  made += 1;
  return `${kind}-${Date.now().toString(36)}-${made}`;
};

export const freshSheet = (name: string): SheetData => ({ id: freshId('sheet'), name, ...FRESH_SHEET });

/** A workbook of the given sheets. */
export const bookOf = (sheets: readonly SheetData[], rest: Partial<BookData> = {}): BookData => ({
  id: freshId('book'),
  name: '',
  appVersion: '',
  locale: ENGLISH,
  styles: {},
  sheetOrder: sheets.map((sheet) => sheet.id),
  sheets: Object.fromEntries(sheets.map((sheet) => [sheet.id, sheet])),
  ...rest,
});

export const emptyBook = (): BookData => bookOf([freshSheet('Sheet1')]);
