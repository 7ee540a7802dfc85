import { contains } from './address';
import type { Area } from './change';
import type { CellState, Outline, SheetOutline, Snapshot } from './port';

const EMPTY: CellState = { value: null };

export const isEmpty = (cell: CellState): boolean =>
  cell.value === null && cell.formula === undefined && cell.error === undefined;

export const sheetNamed = (outline: Outline, name: string): SheetOutline | undefined =>
  outline.sheets.find((sheet) => sheet.name === name);

/** Spreadsheets hold two names that differ only in letter case to be one. */
export const areaNamed = (outline: Outline, name: string): Area | undefined => {
  const wanted = name.toLowerCase();
  const key = Object.keys(outline.names).find((known) => known.toLowerCase() === wanted);
  return key === undefined ? undefined : outline.names[key];
};

/** Everything on a sheet from A1 to the last cell in use; undefined for a sheet that is empty or not there. */
export const usedArea = (outline: Outline, name: string): Area | undefined => {
  const sheet = sheetNamed(outline, name);
  return sheet && sheet.rows > 0 && sheet.columns > 0
    ? { sheet: name, row: 0, column: 0, rows: sheet.rows, columns: sheet.columns }
    : undefined;
};

/** The part of an area that holds anything; undefined where nothing does, or where its sheet is not there. */
export const inUse = (outline: Outline, area: Area): Area | undefined => {
  const sheet = sheetNamed(outline, area.sheet);
  const rows = Math.min(area.rows, (sheet?.rows ?? 0) - area.row);
  const columns = Math.min(area.columns, (sheet?.columns ?? 0) - area.column);
  return rows > 0 && columns > 0 ? { ...area, rows, columns } : undefined;
};

/** A cell of a snapshot; one that was not asked for or lies past the cells in use is empty. */
export const cellAt = (snapshot: Snapshot, sheet: string, row: number, column: number): CellState => {
  for (const { area, cells } of snapshot.blocks)
    if (contains(area, sheet, row, column)) return cells[row - area.row]?.[column - area.column] ?? EMPTY;
  return EMPTY;
};

/** The cells of an area of a snapshot, row by row. */
export const cellsOf = (snapshot: Snapshot, area: Area): CellState[][] =>
  Array.from({ length: area.rows }, (_, row) =>
    Array.from({ length: area.columns }, (_, column) =>
      cellAt(snapshot, area.sheet, area.row + row, area.column + column),
    ),
  );

/** What a cell says as a label: numbers and truth values become their text, errors and empty cells ''. */
export const labelOf = (cell: CellState): string => {
  if (cell.value === null) return '';
  if (typeof cell.value === 'boolean') return cell.value ? 'TRUE' : 'FALSE';
  return String(cell.value).trim();
};
