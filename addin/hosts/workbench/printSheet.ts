import { BooleanNumber, HorizontalAlign, type IStyleData } from '@univerjs/core';

import { WorkbookError } from '../../workbook/port';
import { openBook, type Grid } from './grid/openGrid';
import { pageOf, type PageSetup } from './grid/pageSetup';
import { usedCells } from './grid/readBook';

/** What fits across a page between its margins, on the screen's measure, pixels. */
const PAGE_WIDTH = { upright: 700, landscape: 1_010 } as const;
/** Text is made larger or smaller with the sheet, within reason. */
const SCALE = { least: 0.6, most: 1.5 } as const;
const ORDINARY_SIZE = 11;

/** One cell of a page; a cell that another covers is not on it. */
export interface PrintedCell {
  readonly text: string;
  readonly rows: number;
  readonly columns: number;
  readonly style: IStyleData;
}

/** A sheet as it prints, before anything is drawn. */
export interface PrintedPage {
  readonly title: string;
  readonly landscape: boolean;
  readonly repeatRows: number;
  /** Widths of the columns, shares of the whole. */
  readonly widths: readonly number[];
  /** How much larger than on the screen the text is. */
  readonly scale: number;
  readonly rows: readonly (readonly PrintedCell[])[];
}

/** The sheet's page area, down to its last row in use; the whole sheet where none was set up. */
export const printedPage = (grid: Grid, name: string): PrintedPage => {
  const sheet = openBook(grid).getSheetByName(name);
  if (!sheet) throw new WorkbookError(`There is no sheet “${name}” to print.`);
  const used = usedCells(grid, sheet.getSheet());
  if (used.rows === 0) throw new WorkbookError(`The sheet “${name}” is empty; there is nothing to print.`);
  const whole: PageSetup = { area: { row: 0, column: 0, ...used }, landscape: false, repeatRows: 0 };
  const { area, landscape, repeatRows } = pageOf(grid, sheet.getSheetId()) ?? whole;
  const [lastRow, lastColumn] = [
    Math.min(area.row + area.rows, used.rows),
    Math.min(area.column + area.columns, used.columns),
  ];
  const [height, width] = [Math.max(1, lastRow - area.row), Math.max(1, lastColumn - area.column)];
  const pixels = Array.from({ length: width }, (_, column) => sheet.getColumnWidth(area.column + column));
  const total = pixels.reduce((sum, one) => sum + one, 0);
  const fits = PAGE_WIDTH[landscape ? 'landscape' : 'upright'] / total;
  const texts = sheet.getRange(area.row, area.column, height, width).getDisplayValues();
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
        text: (texts[down]?.[across] ?? '').replace(/\s+$/, ''),
        rows: merge ? merge.endRow - merge.startRow + 1 : 1,
        columns: merge ? Math.min(merge.endColumn, lastColumn - 1) - merge.startColumn + 1 : 1,
        style: sheet.getRange(row, column).getCellStyleData() ?? {},
      },
    ];
  };
  return {
    title: name,
    landscape,
    repeatRows: Math.max(0, repeatRows - area.row),
    widths: pixels.map((one) => one / total),
    scale: Math.min(SCALE.most, Math.max(SCALE.least, fits)),
    rows: Array.from({ length: height }, (_row, down) =>
      Array.from({ length: width }, (_column, across) => cell(down, across)).flat(),
    ),
  };
};

const ALIGNED: Readonly<Record<number, string>> = {
  [HorizontalAlign.LEFT]: 'left',
  [HorizontalAlign.CENTER]: 'center',
  [HorizontalAlign.RIGHT]: 'right',
};
const SIDES = { t: 'Top', r: 'Right', b: 'Bottom', l: 'Left' } as const;
const NUMERIC = /^[-+]?[\d.,:/%\s]+$/;

/** A row across which the eye must follow gets a rule under it. */
const FULL_ROW = 3;

const drawCell = ({ text, rows, columns, style }: PrintedCell, scale: number): HTMLTableCellElement => {
  const cell = document.createElement('td');
  cell.textContent = text;
  cell.rowSpan = rows;
  cell.colSpan = columns;
  cell.style.fontSize = `${((style.fs ?? ORDINARY_SIZE) * scale).toFixed(1)}pt`;
  if (style.bl === BooleanNumber.TRUE) cell.style.fontWeight = 'bold';
  if (style.it === BooleanNumber.TRUE) cell.style.fontStyle = 'italic';
  cell.style.textAlign = ALIGNED[style.ht ?? 0] ?? (NUMERIC.test(text) ? 'right' : 'left');
  for (const [side, name] of Object.entries(SIDES))
    if (style.bd?.[side as keyof typeof SIDES])
      cell.style[`border${name}Style` as 'borderTopStyle'] = 'solid';
  return cell;
};

/** The page as a table, black on white, as wide as the paper. */
export const drawPage = ({ title, landscape, repeatRows, widths, scale, rows }: PrintedPage): HTMLElement => {
  const view = document.createElement('section');
  view.id = 'print-view';
  const paper = document.createElement('style');
  paper.textContent = `@page { size: ${landscape ? 'landscape' : 'portrait'}; margin: 12mm; }`;
  const table = document.createElement('table');
  table.setAttribute('aria-label', title);
  const columns = document.createElement('colgroup');
  for (const width of widths) {
    const column = document.createElement('col');
    column.style.width = `${(width * 100).toFixed(2)}%`;
    columns.append(column);
  }
  const part = (name: 'thead' | 'tbody', lines: PrintedPage['rows']): HTMLElement => {
    const element = document.createElement(name);
    for (const line of lines) {
      const row = document.createElement('tr');
      if (line.filter(({ text }) => text !== '').length >= FULL_ROW) row.className = 'ruled';
      row.append(
        ...line.map((cell, index) => {
          const drawn = drawCell(cell, scale);
          // A title may run on over the empty cells beside it, as on the screen.
          if (cell.columns === 1 && line[index + 1]?.text === '' && index < 2) drawn.className = 'runs-on';
          return drawn;
        }),
      );
      element.append(row);
    }
    return element;
  };
  table.append(columns);
  if (repeatRows > 0) table.append(part('thead', rows.slice(0, repeatRows)));
  table.append(part('tbody', rows.slice(repeatRows)));
  view.append(paper, table);
  return view;
};

/**
 * Lays the sheet out as a page and hands it to the system's printing.
 *
 * @throws WorkbookError where there is nothing to print
 */
export const printSheet = async (grid: Grid, name: string): Promise<void> => {
  await grid.settled();
  document.querySelector('#print-view')?.remove();
  const view = drawPage(printedPage(grid, name));
  const title = document.title;
  document.body.append(view);
  document.title = name;
  addEventListener(
    'afterprint',
    () => {
      view.remove();
      document.title = title;
    },
    { once: true },
  );
  window.print();
};
