import type { ICellData, IStyleData } from '@univerjs/core';

import type { FileBook, FileRows, FileSheet, FileSize } from '../../../files/fileBook';
import type { CellValue } from '../../../workbook/change';
import { bookOf, FRESH_SHEET, freshId, type BookData, type SheetData } from '../grid/bookData';
import { resourcesOf } from '../grid/bookParts';
import { gridCell } from '../grid/cells';
import { NO, STRING, WHOLE_BOOK, YES } from '../grid/kept';
import { withPages, type PageSetup } from '../grid/bookPages';
import { pixelsOf, rangeOf } from '../grid/ranges';
import { gridStyle } from './cellStyles';
import { drawingsOf } from './gridCharts';
import { gridRule } from './gridRules';

const PIXELS_A_POINT = 4 / 3;

/** Cells of a sheet as the grid keeps them, and how far they reach. */
interface Cells {
  readonly data: Record<number, Record<number, ICellData>>;
  rows: number;
  columns: number;
}

/** Puts a workbook of the grid together from what a file's reader tells. */
export interface GridBook {
  rows(page: FileRows): void;
  book(file: FileBook): BookData;
}

const plain = (value: CellValue): ICellData | undefined => {
  if (value === null || value === '') return undefined;
  const { v, t } = gridCell(value);
  return { v, t };
};

/** An error that stands by itself is kept as the formula that comes to it. */
const withFormula = (
  cell: ICellData | undefined,
  formula: string | undefined,
  error: string | undefined,
): ICellData => ({
  f: formula ?? `=${error}`,
  ...(error === undefined ? cell : { v: error, t: STRING }),
});

const sizes = <Size>(list: readonly FileSize[], sized: (size: number) => Size) =>
  Object.fromEntries(
    list.map(({ at, size, hidden }) => [
      at,
      { ...(size === undefined ? {} : sized(size)), ...(hidden ? { hd: YES } : {}) },
    ]),
  );

const sheetData = (sheet: FileSheet, id: string, { data, rows, columns }: Cells): SheetData => {
  const { frozen } = sheet;
  return {
    id,
    name: sheet.name,
    cellData: data,
    rowData: sizes(sheet.rowSizes, (height) => ({ h: height * PIXELS_A_POINT, ia: NO })),
    columnData: sizes(sheet.columnSizes, (width) => ({ w: pixelsOf(width) })),
    hidden: sheet.hidden ? YES : NO,
    rowCount: rows + FRESH_SHEET.rowCount,
    columnCount: Math.max(FRESH_SHEET.columnCount, columns + 6),
    freeze: {
      xSplit: frozen.columns,
      ySplit: frozen.rows,
      startRow: frozen.rows || -1,
      startColumn: frozen.columns || -1,
    },
    mergeData: sheet.merges.map(rangeOf),
    showGridlines: sheet.gridLines ? YES : NO,
  };
};

const pageSetup = ({ page }: FileSheet, used: Cells): PageSetup | undefined => {
  if (!page) return undefined;
  const { row, column, rows, columns } = page.area ?? { row: 0, column: 0, ...used };
  return { ...page, area: { row, column, rows: Math.max(rows, 1), columns: Math.max(columns, 1) } };
};

export const gridBook = (): GridBook => {
  const sheets: Cells[] = [];
  const looks: (string | undefined)[] = [undefined];
  const styles: BookData['styles'] = {};
  const cellsOf = (sheet: number): Cells => (sheets[sheet] ??= { data: {}, rows: 0, columns: 0 });

  const learn = (style: IStyleData | undefined): void => {
    const id = style && `s${looks.length}`;
    if (id) styles[id] = style;
    looks.push(id);
  };
  return {
    rows: ({ sheet, row: first, values, looks: numbers, formulas, newLooks }) => {
      newLooks.forEach((look) => learn(gridStyle(look)));
      const cells = cellsOf(sheet);
      const put = (row: number, column: number, cell: ICellData): void => {
        (cells.data[row] ??= {})[column] = cell;
        cells.rows = Math.max(cells.rows, row + 1);
        cells.columns = Math.max(cells.columns, column + 1);
      };
      const styled = (cell: ICellData | undefined, row: number, column: number): ICellData | undefined => {
        const s = looks[numbers[row - first]?.[column] ?? 0];
        return s === undefined ? cell : { ...cell, s };
      };
      values.forEach((line, down) => {
        const row = first + down;
        const width = Math.max(line.length, numbers[down]?.length ?? 0);
        for (let column = 0; column < width; column++) {
          const cell = styled(plain(line[column] ?? null), row, column);
          if (cell) put(row, column, cell);
        }
      });
      for (const { row, column, formula, error } of formulas) {
        const value = plain(values[row - first]?.[column] ?? null);
        const cell = styled(withFormula(value, formula, error), row, column);
        if (cell) put(row, column, cell);
      }
    },
    book: (file) => {
      const id = freshId('book');
      const built = file.sheets.map((sheet, number) => {
        const data = sheetData(sheet, freshId('sheet'), cellsOf(number));
        return { sheet, data, charts: sheet.charts, page: pageSetup(sheet, cellsOf(number)) };
      });
      const idOf = (name: string): string | undefined =>
        built.find(({ data }) => data.name === name)?.data.id;
      const resources = resourcesOf({
        names: file.names.map(({ name, refersTo, sheet }) => ({
          id: freshId('name'),
          name,
          formulaOrRefString: refersTo,
          localSheetId: (sheet === undefined ? undefined : idOf(sheet)) ?? WHOLE_BOOK,
        })),
        rules: Object.fromEntries(
          built.map(({ sheet, data }) => [data.id, sheet.rules.flatMap((rule) => gridRule(rule) ?? [])]),
        ),
        notes: Object.fromEntries(
          built.map(({ sheet, data }) => [
            data.id,
            sheet.notes.map(({ row, column, text }) => ({
              id: freshId('note'),
              row,
              col: column,
              note: text,
              width: 240,
              height: 96,
              show: false,
            })),
          ]),
        ),
        drawings: drawingsOf(built, id),
      });
      return bookOf(
        built.map(({ data }) => data),
        {
          id,
          styles,
          resources,
          custom: withPages(Object.fromEntries(built.map(({ data, page }) => [data.id, page]))),
        },
      );
    },
  };
};
