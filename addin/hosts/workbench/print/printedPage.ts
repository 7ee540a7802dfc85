import { BooleanNumber, HorizontalAlign, type IStyleData } from '@univerjs/core';

import { WorkbookError } from '../../../workbook/port';
import { gridValue } from '../grid/cells';
import { openBook, type Grid } from '../grid/openGrid';
import type { PageSetup } from '../grid/bookPages';
import { pageOf } from '../grid/pageSetup';
import { usedCells } from '../grid/readBook';

export type Side = 'Top' | 'Right' | 'Bottom' | 'Left';
export type Alignment = 'left' | 'center' | 'right';

/** One cell of a page; a cell that another covers is not on it. */
export interface PrintedCell {
  readonly text: string;
  readonly rows: number;
  readonly columns: number;
  /** Points on the sheet. */
  readonly size: number;
  readonly bold: boolean;
  readonly italic: boolean;
  readonly aligned: Alignment;
  readonly lines: readonly Side[];
}

/** A sheet as it prints, before anything is drawn. */
export interface PrintedPage {
  readonly title: string;
  readonly landscape: boolean;
  readonly repeatRows: number;
  readonly pagesHigh?: number;
  /** Widths of the columns, pixels on the screen. */
  readonly widths: readonly number[];
  readonly rows: readonly (readonly PrintedCell[])[];
}

const ORDINARY_SIZE = 11;
const SIDES: Readonly<Record<string, Side>> = { t: 'Top', r: 'Right', b: 'Bottom', l: 'Left' };
const ALIGNED: Readonly<Record<number, Alignment>> = {
  [HorizontalAlign.LEFT]: 'left',
  [HorizontalAlign.CENTER]: 'center',
  [HorizontalAlign.RIGHT]: 'right',
};
/** Where a cell's look says nothing, its value does, whatever its format shows of it: a dash for a zero too. */
const BY_VALUE: Readonly<Record<string, Alignment>> = { number: 'right', boolean: 'center' };

const drawn = ({ fs, bl, it, ht, bd }: IStyleData, value: unknown) => ({
  size: fs ?? ORDINARY_SIZE,
  bold: bl === BooleanNumber.TRUE,
  italic: it === BooleanNumber.TRUE,
  aligned: ALIGNED[ht ?? 0] ?? BY_VALUE[typeof value] ?? 'left',
  lines: Object.entries(bd ?? {}).flatMap(([side, line]) => (line && SIDES[side] ? [SIDES[side]] : [])),
});

/** Blanks alone are nothing; those after a number are its format's, which keeps it clear of its neighbour. */
const shown = (text: string): string => (text.trim() === '' ? '' : text);

/** The sheet's page area, down to its last row in use; the whole sheet where none was set up. */
export const printedPage = (grid: Grid, name: string): PrintedPage => {
  const sheet = openBook(grid).getSheetByName(name);
  if (!sheet) throw new WorkbookError(`There is no sheet “${name}” to print.`);
  const used = usedCells(grid, sheet.getSheet());
  if (used.rows === 0) throw new WorkbookError(`The sheet “${name}” is empty; there is nothing to print.`);
  const whole: PageSetup = { area: { row: 0, column: 0, ...used }, landscape: false, repeatRows: 0 };
  const { area, landscape, repeatRows, pagesHigh } = pageOf(grid, sheet.getSheetId()) ?? whole;
  const [lastRow, lastColumn] = [
    Math.min(area.row + area.rows, used.rows),
    Math.min(area.column + area.columns, used.columns),
  ];
  const [height, width] = [Math.max(1, lastRow - area.row), Math.max(1, lastColumn - area.column)];
  const printed = sheet.getRange(area.row, area.column, height, width);
  const [texts, cells] = [printed.getDisplayValues(), printed.getCellDatas()];
  const merges = sheet.getSheet().getMergeData();

  const cell = (down: number, across: number): PrintedCell[] => {
    const [row, column] = [area.row + down, area.column + across];
    const merge = merges.find(
      (one) =>
        row >= one.startRow && row <= one.endRow && column >= one.startColumn && column <= one.endColumn,
    );
    if (merge && (merge.startRow !== row || merge.startColumn !== column)) return [];
    return [
      {
        text: shown(texts[down]?.[across] ?? ''),
        rows: merge ? merge.endRow - merge.startRow + 1 : 1,
        columns: merge ? Math.min(merge.endColumn, lastColumn - 1) - merge.startColumn + 1 : 1,
        ...drawn(
          sheet.getRange(row, column).getCellStyleData() ?? {},
          gridValue(cells[down]?.[across] ?? {}),
        ),
      },
    ];
  };
  return {
    title: name,
    landscape,
    repeatRows: Math.max(0, repeatRows - area.row),
    ...(pagesHigh === undefined ? {} : { pagesHigh }),
    widths: Array.from({ length: width }, (_, column) => sheet.getColumnWidth(area.column + column)),
    rows: Array.from({ length: height }, (_row, down) =>
      Array.from({ length: width }, (_column, across) => cell(down, across)).flat(),
    ),
  };
};
