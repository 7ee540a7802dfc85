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

/**
 * Cells that a row about plants usually fills: the middle one of the rows with several cells, unless most rows
 * hold one cell and the list is a single column.
 */
export const usualFill = (rows: readonly FilledRow[]): number => {
  const several = rows.map((row) => row.cells.length).filter((cells) => cells > 1);
  if (several.length * 3 < rows.length) return Math.min(rows.length, 1);
  return several.sort((a, b) => a - b)[Math.floor(several.length / 2)] ?? 0;
};
