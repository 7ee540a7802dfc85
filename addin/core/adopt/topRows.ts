import type { ListSheet } from './adoption';
import { cellText } from './cellText';
import type { MergedCells } from './mergedCells';

export interface FilledCell {
  readonly column: number;
  readonly text: string;
  readonly isNumber: boolean;
  /** Columns that the cell spans by a merge. */
  readonly span: number;
}

export interface FilledRow {
  readonly row: number;
  readonly cells: readonly FilledCell[];
  /** The row's texts in one, to tell repeated rows. */
  readonly key: string;
}

/** The filled cells of a row, as text. */
export const filledRow = (sheet: ListSheet, merged: MergedCells, row: number): FilledRow => {
  const cells: FilledCell[] = [];
  (sheet.cells[row] ?? []).forEach((cell, column) => {
    const text = cellText(cell);
    if (text !== '')
      cells.push({ column, text, isNumber: typeof cell === 'number', span: merged.spanOf(row, column) });
  });
  return { row, cells, key: cells.map((cell) => `${cell.column}:${cell.text}`).join('|') };
};

/** The first `most` rows that hold anything. */
export const topRows = (sheet: ListSheet, merged: MergedCells, most: number): readonly FilledRow[] => {
  const rows: FilledRow[] = [];
  for (let row = 0; row < sheet.cells.length && rows.length < most; row++) {
    const filled = filledRow(sheet, merged, row);
    if (filled.cells.length > 0) rows.push(filled);
  }
  return rows;
};

/** The middle one of how many cells the rows fill; 0 for no rows. */
export const usualFill = (rows: readonly FilledRow[]): number => {
  const fills = rows.map((row) => row.cells.length).sort((a, b) => a - b);
  return fills[Math.floor(fills.length / 2)] ?? 0;
};
