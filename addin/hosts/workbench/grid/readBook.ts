import { CommandType, type ICellData, type Worksheet } from '@univerjs/core';
import { FormulaDataModel } from '@univerjs/preset-sheets-core';

import type { Area } from '../../../workbook/change';
import type { Block, CellState, Outline, SheetOutline } from '../../../workbook/port';
import { cellState, isBlank } from './cells';
import { inside, openBook, type Grid } from './openGrid';
import { areaOfReference } from '../../../workbook/references';

/** What fills the cells beside an array formula; the grid keeps it apart from the cells. */
type Spilled = Record<number, Record<number, ICellData | null | undefined> | undefined> | undefined | null;

const spilled = (grid: Grid, sheet: Worksheet): Spilled => {
  const kept = inside(grid).get(FormulaDataModel).getArrayFormulaCellData();
  return kept[sheet.getUnitId()]?.[sheet.getSheetId()] as Spilled;
};

const areaOf = (
  sheet: Worksheet,
  range: { startRow: number; endRow: number; startColumn: number; endColumn: number },
): Area => ({
  sheet: sheet.getName(),
  row: range.startRow,
  column: range.startColumn,
  rows: range.endRow - range.startRow + 1,
  columns: range.endColumn - range.startColumn + 1,
});

/** The cells that the formula of a cell fills, where they are more than the cell. */
export const filledBy = (grid: Grid, sheet: Worksheet, row: number, column: number): Area | undefined => {
  const ranges = inside(grid).get(FormulaDataModel).getArrayFormulaRange();
  const range = ranges[sheet.getUnitId()]?.[sheet.getSheetId()]?.[row]?.[column];
  const area = range && areaOf(sheet, range);
  return area && area.rows * area.columns > 1 ? area : undefined;
};

interface Used {
  readonly rows: number;
  readonly columns: number;
}

const lookedThrough = (grid: Grid, sheet: Worksheet): Used => {
  let rows = 0;
  let columns = 0;
  const take = (row: number, column: number): void => {
    rows = Math.max(rows, row + 1);
    columns = Math.max(columns, column + 1);
  };
  sheet.getCellMatrix().forValue((row, column, cell) => {
    if (cell && !isBlank(cell)) take(row, column);
  });
  for (const [row, line] of Object.entries(spilled(grid, sheet) ?? {}))
    for (const [column, cell] of Object.entries(line ?? {}))
      if (cell && !isBlank(cell)) take(Number(row), Number(column));
  return { rows, columns };
};

const known = new WeakMap<Grid, WeakMap<Worksheet, Used>>();

/** What is known of how far sheets are used; forgotten with the next change. */
const usedNow = (grid: Grid): WeakMap<Worksheet, Used> => {
  if (!known.has(grid))
    grid.commands.onCommandExecuted(({ type }) => {
      if (type === CommandType.MUTATION) known.set(grid, new WeakMap());
    });
  const now = known.get(grid) ?? new WeakMap<Worksheet, Used>();
  known.set(grid, now);
  return now;
};

/** Rows and columns up to the last cell with something in it; a look alone is nothing. */
export const usedCells = (grid: Grid, sheet: Worksheet): Used => {
  const now = usedNow(grid);
  const used = now.get(sheet) ?? lookedThrough(grid, sheet);
  now.set(sheet, used);
  return used;
};

const sheetOutline = (grid: Grid, sheet: Worksheet): SheetOutline => ({
  name: sheet.getName(),
  ...usedCells(grid, sheet),
  merges: sheet.getMergeData().map((range) => areaOf(sheet, range)),
});

const names = (grid: Grid, sheets: ReadonlySet<string>): Record<string, Area> => {
  const found: Record<string, Area> = {};
  for (const name of openBook(grid).getDefinedNames()) {
    const area = areaOfReference(name.getFormulaOrRefString());
    if (area && sheets.has(area.sheet)) found[name.getName()] = area;
  }
  return found;
};

export const worksheets = (grid: Grid): Worksheet[] =>
  openBook(grid)
    .getSheets()
    .map((sheet) => sheet.getSheet());

/** The sheet of a name; its id where the commands want one. */
export const sheetNamed = (grid: Grid, name: string): Worksheet => {
  const sheet = worksheets(grid).find((one) => one.getName() === name);
  if (!sheet) throw new Error(`There is no sheet “${name}”.`);
  return sheet;
};

export const outlineOf = (grid: Grid): Outline => {
  const sheets = worksheets(grid);
  return {
    sheets: sheets.map((sheet) => sheetOutline(grid, sheet)),
    names: names(grid, new Set(sheets.map((sheet) => sheet.getName()))),
    active: openBook(grid).getActiveSheet().getSheetName(),
  };
};

/** The formula of a cell; a copied one is kept as a reference to the cell it was copied from. */
export const formulaOf = (
  grid: Grid,
  sheet: Worksheet,
  row: number,
  column: number,
  cell: ICellData,
): string | undefined => {
  if (cell.f) return cell.f;
  if (!cell.si) return undefined;
  const model = inside(grid).get(FormulaDataModel);
  return model.getFormulaStringByCell(row, column, sheet.getSheetId(), sheet.getUnitId()) ?? undefined;
};

const EMPTY: CellState = { value: null };

export const blockOf = (grid: Grid, area: Area): Block => {
  const sheet = sheetNamed(grid, area.sheet);
  const matrix = sheet.getCellMatrix();
  const beside = spilled(grid, sheet);
  const state = (row: number, column: number): CellState => {
    const cell = matrix.getValue(row, column) as ICellData | null | undefined;
    if (cell && !isBlank(cell)) return cellState(cell, formulaOf(grid, sheet, row, column, cell));
    const fromArray = beside?.[row]?.[column];
    return fromArray ? cellState(fromArray, undefined) : EMPTY;
  };
  return {
    area,
    cells: Array.from({ length: area.rows }, (_row, down) =>
      Array.from({ length: area.columns }, (_column, across) => state(area.row + down, area.column + across)),
    ),
  };
};
