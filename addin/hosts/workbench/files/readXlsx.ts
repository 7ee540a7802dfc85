import { Workbook, type Cell, type Worksheet } from '@cj-tech-master/excelts';
import { BooleanNumber, type ICellData, type IColumnData, type IRowData } from '@univerjs/core';

import { bookOf, FRESH_SHEET, freshId, type BookData, type SheetData } from '../grid/bookData';
import { resourcesOf, type BookParts } from '../grid/bookParts';
import { withPages, type PageSetup } from '../grid/pageSetup';
import { pixelsOf } from '../grid/ranges';
import { feedSpelling } from '../../../workbook/formula/feedSpelling';
import { gridStyle } from './cellStyles';
import { gridContent } from './cellContent';
import { filledCells } from './arrayFormulas';
import { fileAreas } from './fileAreas';
import { drawingsIn, readyCharts } from './fileCharts';
import { FileRefused } from './fileRefused';
import { namesIn, notesIn, rulesIn } from './fileParts';
import { leftBehind } from './leftBehind';

/** A file as it was opened. */
export interface OpenedFile {
  readonly book: BookData;
  /** The sheet that was on top when it was saved. */
  readonly active: string;
  /** What the file holds and the grid does not keep, in words: "2 pictures". */
  readonly left: readonly string[];
}

/** The grid holds about this many cells before it grows slow. */
const MOST_CELLS = 2_000_000;
const PIXELS_A_POINT = 4 / 3;
const FEWEST_COLUMNS = FRESH_SHEET.columnCount;

/** Looks that many cells share are kept once. */
const styleKeeper = () => {
  const styles: BookData['styles'] = {};
  const ids = new Map<string, string>();
  const keep = (cell: Cell): string | undefined => {
    const style = gridStyle(cell.style);
    if (!style) return undefined;
    const text = JSON.stringify(style);
    const known = ids.get(text);
    if (known !== undefined) return known;
    const id = `s${ids.size}`;
    ids.set(text, id);
    styles[id] = style;
    return id;
  };
  return { styles, keep };
};

const columnsOf = (sheet: Worksheet): Record<number, Partial<IColumnData>> => {
  const columns: Record<number, Partial<IColumnData>> = {};
  (sheet.columns ?? []).forEach((column, index) => {
    const { width, hidden } = column;
    if (width !== undefined || hidden)
      columns[index] = {
        ...(width === undefined ? {} : { w: pixelsOf(width) }),
        ...(hidden ? { hd: BooleanNumber.TRUE } : {}),
      };
  });
  return columns;
};

const freezeOf = (sheet: Worksheet): SheetData['freeze'] => {
  const view = sheet.views?.[0];
  const rows = view?.state === 'frozen' ? (view.ySplit ?? 0) : 0;
  const columns = view?.state === 'frozen' ? (view.xSplit ?? 0) : 0;
  return { xSplit: columns, ySplit: rows, startRow: rows || -1, startColumn: columns || -1 };
};

const pageIn = (sheet: Worksheet, used: { rows: number; columns: number }): PageSetup | undefined => {
  const { printArea, orientation, printTitlesRow, fitToPage, fitToWidth, fitToHeight } = sheet.pageSetup;
  const [area] = printArea ? fileAreas(printArea, sheet.name) : [];
  const repeatRows = /^\$?1:\$?(\d+)$/.exec(printTitlesRow ?? '')?.[1];
  if (!area && orientation !== 'landscape' && !repeatRows && fitToWidth !== 1) return undefined;
  const { row, column, rows, columns } = area ?? { row: 0, column: 0, ...used };
  return {
    area: { row, column, rows: Math.max(rows, 1), columns: Math.max(columns, 1) },
    landscape: orientation === 'landscape',
    repeatRows: Number(repeatRows ?? 0),
    ...(fitToPage && fitToHeight ? { pagesHigh: fitToHeight } : {}),
  };
};

const readSheet = (sheet: Worksheet, keep: (cell: Cell) => string | undefined, count: () => void) => {
  const cellData: Record<number, Record<number, ICellData>> = {};
  const rowData: Record<number, Partial<IRowData>> = {};
  let [rows, columns] = [0, 0];
  const filled = filledCells(sheet.name);
  for (let number = 1; number <= sheet.rowCount; number++) {
    const row = sheet.findRow(number);
    if (!row) continue;
    const height = (row.height ?? 0) * PIXELS_A_POINT;
    if (row.customHeight && height > 0) rowData[number - 1] = { h: height, ia: BooleanNumber.FALSE };
    if (row.hidden) rowData[number - 1] = { ...rowData[number - 1], hd: BooleanNumber.TRUE };
    for (let column = 1; column <= row.cellCount; column++) {
      // Looking for a cell, and not asking for it, makes none where there is none.
      const cell = row.findCell(column);
      if (!cell) continue;
      count();
      const s = keep(cell);
      const covered = cell.isMerged && cell.master !== cell;
      const content =
        covered || filled(cell, number - 1, column - 1) ? undefined : gridContent(cell, feedSpelling);
      if (s === undefined && content === undefined) continue;
      (cellData[number - 1] ??= {})[column - 1] = { ...content, ...(s === undefined ? {} : { s }) };
      rows = Math.max(rows, number);
      columns = Math.max(columns, column);
    }
  }
  return { cellData, rowData, used: { rows, columns } };
};

/** Reads the bytes of an .xlsx file that has passed the guard. */
export const readXlsx = async (name: string, bytes: Uint8Array): Promise<OpenedFile> => {
  readyCharts();
  const file = new Workbook();
  try {
    await file.xlsx.load(bytes as never);
  } catch (reason) {
    throw new FileRefused(
      `“${name}” could not be read: it is damaged, or was written in a way that is not known here.`,
      {
        cause: reason,
      },
    );
  }
  if (file.worksheets.length === 0) throw new FileRefused(`“${name}” has no sheet with cells in it.`);
  let cells = 0;
  const count = (): void => {
    cells += 1;
    if (cells > MOST_CELLS)
      throw new FileRefused(
        `“${name}” has more than ${MOST_CELLS.toLocaleString('en')} cells, which is more than this page holds.`,
      );
  };
  const id = freshId('book');
  const { styles, keep } = styleKeeper();
  const pages: Record<string, PageSetup | undefined> = {};
  const sheets = file.worksheets.map((sheet): SheetData => {
    const sheetId = freshId('sheet');
    const { used, ...data } = readSheet(sheet, keep, count);
    pages[sheetId] = pageIn(sheet, used);
    return {
      id: sheetId,
      name: sheet.name,
      ...data,
      hidden: sheet.state === 'visible' ? BooleanNumber.FALSE : BooleanNumber.TRUE,
      rowCount: used.rows + FRESH_SHEET.rowCount,
      columnCount: Math.max(FEWEST_COLUMNS, used.columns + 6),
      columnData: columnsOf(sheet),
      freeze: freezeOf(sheet),
      mergeData: (sheet.model.mergeCells ?? []).flatMap((text) =>
        fileAreas(text, sheet.name).map(({ row, column, rows, columns }) => ({
          startRow: row,
          endRow: row + rows - 1,
          startColumn: column,
          endColumn: column + columns - 1,
        })),
      ),
      showGridlines: sheet.views?.[0]?.showGridLines === false ? BooleanNumber.FALSE : BooleanNumber.TRUE,
    };
  });
  const active = file.views?.[0]?.activeTab ?? 0;
  const idOf = (sheetName: string): string | undefined =>
    sheets.find((sheet) => sheet.name === sheetName)?.id;
  const charts = drawingsIn(file, sheets, id);
  const parts: BookParts = {
    names: namesIn(file, idOf),
    rules: Object.fromEntries(file.worksheets.map((sheet) => [idOf(sheet.name), rulesIn(sheet)])),
    notes: Object.fromEntries(file.worksheets.map((sheet) => [idOf(sheet.name), notesIn(sheet)])),
    drawings: charts.drawings,
  };
  return {
    book: bookOf(sheets, { id, styles, resources: resourcesOf(parts), custom: withPages(pages) }),
    active: sheets[active]?.name ?? '',
    left: leftBehind(file, charts.unread),
  };
};
