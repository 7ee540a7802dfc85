import { Workbook, type Worksheet } from '@cj-tech-master/excelts';

import { contentOf } from './cellContent';
import { chartsOn, readyCharts } from './charts';
import { fileAreas } from './fileAreas';
import type { FileBook, FileListener, FileSheet, FileSize } from './fileBook';
import { FileRefused } from './fileRefused';
import { filledCells } from './filledCells';
import { leftBehind } from './leftBehind';
import { rowPages, type RowPages } from './rowPages';
import { columnSizes, frozenIn, namesIn, notesIn, pageIn, rulesIn } from './sheetParts';

/** Characters of a sheet's text that are taken apart before the next word on progress. */
const SLICE = 500_000;

const rowsIn = (text: string): number => text.split('<row ').length - 1;

/** A text in slices, each of whole tags, so that how far it is can be told in between. */
const slices = function* (text: string, told: (rows: number) => void): Generator<string> {
  for (let at = 0; at < text.length;) {
    const tag = text.indexOf('<', at + SLICE);
    const end = tag < 0 ? text.length : tag;
    const slice = text.slice(at, end);
    yield slice;
    told(rowsIn(slice));
    at = end;
  }
};

/** The part of the library's reader that hands a text to what takes it apart. */
interface TextReader {
  createTextStream(text: string): AsyncIterable<string> | Iterable<string>;
}

/** The file with its sheets taken apart slice by slice. */
const load = async (bytes: Uint8Array, { progress }: FileListener): Promise<Workbook> => {
  const file = new Workbook();
  const reader = file.xlsx as unknown as TextReader;
  const whole = reader.createTextStream.bind(reader);
  let [done, of] = [0, 0];
  reader.createTextStream = (text) => {
    const rows = text.includes('<sheetData') ? rowsIn(text) : 0;
    if (rows === 0) return whole(text);
    of += rows;
    progress(done, of);
    return slices(text, (more) => progress((done += more), of));
  };
  await file.xlsx.load(bytes as never);
  return file;
};

/** Tells the cells of a sheet; gives the heights of its rows. */
const readCells = (sheet: Worksheet, number: number, pages: RowPages): FileSize[] => {
  const sizes: FileSize[] = [];
  const filled = filledCells(sheet.name);
  for (let row = 0; row < sheet.rowCount; row++) {
    const line = sheet.findRow(row + 1);
    if (!line) continue;
    const height = line.customHeight && (line.height ?? 0) > 0 ? line.height : undefined;
    if (height !== undefined || line.hidden)
      sizes.push({
        at: row,
        ...(height === undefined ? {} : { size: height }),
        ...(line.hidden ? { hidden: true } : {}),
      });
    pages.row(number, row);
    for (let column = 0; column < line.cellCount; column++) {
      // Looking for a cell, and not asking for it, makes none where there is none.
      const cell = line.findCell(column + 1);
      if (!cell) continue;
      const covered = (cell.isMerged && cell.master !== cell) || filled(cell, row, column);
      pages.cell(column, covered ? undefined : contentOf(cell), pages.look(cell.style));
    }
  }
  return sizes;
};

/** Reads the bytes of an .xlsx file that has passed the guard. */
export const readXlsx = async (
  name: string,
  bytes: Uint8Array,
  listener: FileListener,
): Promise<FileBook> => {
  readyCharts();
  const file = await load(bytes, listener).catch((cause: unknown) => {
    throw new FileRefused(
      `“${name}” could not be read: it is damaged, or was written in a way that is not known here.`,
      { cause },
    );
  });
  if (file.worksheets.length === 0) throw new FileRefused(`“${name}” has no sheet with cells in it.`);
  const pages = rowPages(name, listener);
  const titles = new Set(file.worksheets.map((sheet) => sheet.name));
  let unread = 0;
  const sheets = file.worksheets.map((sheet, number): FileSheet => {
    const rowSizes = readCells(sheet, number, pages);
    const page = pageIn(sheet);
    const found = chartsOn(sheet, titles);
    unread += found.unread;
    return {
      name: sheet.name,
      hidden: sheet.state !== 'visible',
      merges: (sheet.model.mergeCells ?? []).flatMap((text) => fileAreas(text, sheet.name)),
      columnSizes: columnSizes(sheet),
      rowSizes,
      frozen: frozenIn(sheet),
      gridLines: sheet.views?.[0]?.showGridLines !== false,
      ...(page ? { page } : {}),
      rules: rulesIn(sheet),
      notes: notesIn(sheet),
      charts: found.charts,
    };
  });
  pages.end();
  return {
    sheets,
    names: namesIn(file),
    active: sheets[file.views?.[0]?.activeTab ?? 0]?.name ?? '',
    left: leftBehind(file, unread),
  };
};
