import { Workbook, type CellFormulaValue, type Worksheet } from '@cj-tech-master/excelts';
import { BooleanNumber, type ICellData, type IStyleData } from '@univerjs/core';

import { PAGE_MARGIN } from '../../../workbook/change';
import { cellAddress, columnLetters, fixedReference } from '../../../workbook/address';
import type { BookData, SheetData } from '../grid/bookData';
import { partsOf, type BookParts } from '../grid/bookParts';
import { ERRORS, gridValue } from '../grid/cells';
import { pagesOf, type PageSetup } from '../grid/bookPages';
import { charactersOf } from '../grid/ranges';
import { areaOfReference } from '../../../workbook/references';
import { feedSpelling } from '../../../workbook/formula/feedSpelling';
import { writeArray, type Fills } from './arrayFormulas';
import { fileStyle } from './cellStyles';
import { addCharts, readyCharts } from './fileCharts';
import { addRules } from './fileRules';

/** What the grid knows of a cell beside what is kept in it. */
export interface FileFormulas {
  /** The formula of a cell, also where it was copied from another and is kept by reference. */
  of(sheetId: string, row: number, column: number, cell: ICellData): string | undefined;
  /** What the formula of a cell fills where that is more than the cell. */
  fills(sheetId: string, row: number, column: number): Fills | undefined;
}

const POINTS_A_PIXEL = 3 / 4;
/** Columns that nobody made wider or narrower, in characters. */
const ORDINARY_WIDTH = 10.5;
/** Inches. */
const MARGIN = PAGE_MARGIN / 25.4;
const PAGE_MARGINS = {
  left: MARGIN,
  right: MARGIN,
  top: MARGIN,
  bottom: MARGIN,
  header: 0.3,
  footer: 0.3,
};

const fileResult = (cell: ICellData): CellFormulaValue['result'] => {
  const value = gridValue(cell);
  if (typeof value === 'string' && ERRORS.has(value)) return { error: value as '#N/A' };
  return value ?? undefined;
};

const styleOf = (book: BookData, cell: ICellData): IStyleData | undefined =>
  (typeof cell.s === 'string' ? book.styles[cell.s] : cell.s) ?? undefined;

const writeCells = (book: BookData, data: SheetData, sheet: Worksheet, formulas: FileFormulas): void => {
  const arrays: (() => void)[] = [];
  for (const [row, line] of Object.entries(data.cellData ?? {}))
    for (const [column, kept] of Object.entries((line ?? {}) as Record<string, ICellData | null>)) {
      if (!kept) continue;
      const cell = sheet.getCell(Number(row) + 1, Number(column) + 1);
      const style = styleOf(book, kept);
      if (style) cell.style = fileStyle(style);
      const formula = formulas.of(data.id, Number(row), Number(column), kept);
      if (formula) {
        const result = fileResult(kept);
        const value = {
          formula: feedSpelling(formula).replace(/^=/, ''),
          ...(result === undefined ? {} : { result }),
        };
        const fills = formulas.fills(data.id, Number(row), Number(column));
        if (fills) arrays.push(() => writeArray(sheet, value, fills));
        else cell.value = value;
      } else cell.value = gridValue(kept);
    }
  // Last, because a cell that one fills may be kept for its look alone.
  for (const write of arrays) write();
};

const writeSizes = (data: SheetData, sheet: Worksheet): void => {
  sheet.properties.defaultColWidth = ORDINARY_WIDTH;
  for (const [column, { w, hd } = {}] of Object.entries(data.columnData ?? {})) {
    const target = sheet.getColumn(Number(column) + 1);
    if (w !== undefined) target.width = charactersOf(w);
    if (hd === BooleanNumber.TRUE) target.hidden = true;
  }
  for (const [row, { h, ah, ia, hd } = {}] of Object.entries(data.rowData ?? {})) {
    if (h !== undefined && ia === BooleanNumber.FALSE)
      sheet.getRow(Number(row) + 1).height = h * POINTS_A_PIXEL;
    else if (ah !== undefined)
      // Other programs show a row as high as the file says, and fit it anew when its text is changed.
      Object.assign(sheet.getRow(Number(row) + 1), { height: ah * POINTS_A_PIXEL, customHeight: false });
    if (hd === BooleanNumber.TRUE) sheet.getRow(Number(row) + 1).hidden = true;
  }
  for (const { startRow, startColumn, endRow, endColumn } of data.mergeData ?? [])
    sheet.mergeCells(startRow + 1, startColumn + 1, endRow + 1, endColumn + 1);
};

const writePage = (page: PageSetup, sheet: Worksheet): void => {
  const { row, column, rows, columns } = page.area;
  Object.assign(sheet.pageSetup, {
    printArea: `${cellAddress(row, column)}:${cellAddress(row + rows - 1, column + columns - 1)}`,
    orientation: page.landscape ? 'landscape' : 'portrait',
    fitToPage: true,
    fitToWidth: 1,
    fitToHeight: page.pagesHigh ?? 0,
    margins: PAGE_MARGINS,
    ...(page.repeatRows > 0 ? { printTitlesRow: `1:${page.repeatRows}` } : {}),
  });
};

const viewOf = ({ freeze, showGridlines }: SheetData): Worksheet['views'] => {
  const showGridLines = showGridlines !== BooleanNumber.FALSE;
  const { xSplit = 0, ySplit = 0 } = freeze ?? {};
  if (xSplit === 0 && ySplit === 0) return [{ showGridLines }];
  return [
    { state: 'frozen', xSplit, ySplit, topLeftCell: `${columnLetters(xSplit)}${ySplit + 1}`, showGridLines },
  ];
};

const writeNames = (file: Workbook, { names }: BookParts): void => {
  // Given as ranges, the library would quote an apostrophe in a sheet's name a second time.
  file.definedNames.model = names.flatMap(({ name, formulaOrRefString }) => {
    const area = areaOfReference(formulaOrRefString);
    return area
      ? [{ name, ranges: [], kind: 'formula' as const, formulaExpression: fixedReference(area) }]
      : [];
  });
};

/** The workbook as the bytes of an .xlsx file, with the results of its formulas for programs that do not compute them. */
export const writeXlsx = async (
  book: BookData,
  active: string,
  formulas: FileFormulas,
): Promise<Uint8Array> => {
  // A file is always built anew: one that was loaded and is saved again points to parts that it no longer has.
  readyCharts();
  const file = new Workbook();
  const parts = partsOf(book);
  const pages = pagesOf(book.custom);
  const sheets = book.sheetOrder.map((id) => book.sheets[id] as SheetData);
  for (const data of sheets) {
    const { id } = data;
    const sheet = file.addWorksheet(data.name, {
      views: viewOf(data),
      state: data.hidden === BooleanNumber.TRUE ? 'hidden' : 'visible',
    });
    writeCells(book, data, sheet, formulas);
    writeSizes(data, sheet);
    addRules(sheet, parts.rules[id] ?? []);
    for (const { row, col, note } of parts.notes[id] ?? []) sheet.getCell(row + 1, col + 1).note = note;
    const page = pages[id];
    if (page) writePage(page, sheet);
  }
  const activeTab = Math.max(
    0,
    sheets.findIndex(({ name }) => name === active),
  );
  file.views = [
    { x: 0, y: 0, width: 20_000, height: 14_000, firstSheet: 0, activeTab, visibility: 'visible' },
  ];
  writeNames(file, parts);
  addCharts(file, sheets, parts);
  return new Uint8Array(await file.xlsx.writeBuffer());
};
