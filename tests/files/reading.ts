import type { FileBook, FileRows } from '../../addin/files/fileBook';
import { readFile } from '../../addin/files/readFile';
import type { CellValue } from '../../addin/workbook/change';

/** What was told of a file until it was read. */
export interface Read {
  readonly book: FileBook;
  readonly pages: readonly FileRows[];
  readonly progress: readonly (readonly [done: number, of: number])[];
}

export const readAll = async (name: string, bytes: Uint8Array): Promise<Read> => {
  const pages: FileRows[] = [];
  const progress: (readonly [number, number])[] = [];
  const book = await readFile(name, bytes, {
    rows: (page) => void pages.push(page),
    progress: (done, of) => void progress.push([done, of]),
  });
  return { book, pages, progress };
};

/** The values of a sheet, row by row from its top. */
export const valuesOf = ({ pages }: Read, sheet = 0): CellValue[][] => {
  const rows: CellValue[][] = [];
  for (const page of pages.filter((one) => one.sheet === sheet))
    page.values.forEach((line, down) => {
      rows[page.row + down] = [...line];
    });
  return Array.from(rows, (line) => line ?? []);
};
