import type { ListSheet, MergedArea } from './adoption';

/** Merged areas by what the reading needs of them. */
export interface MergedCells {
  /** The area's corner for a cell that a merge covers; the cell itself otherwise. */
  cornerOf(row: number, column: number): readonly [number, number];
  /** Columns that a cell spans. */
  spanOf(row: number, column: number): number;
  /** True where the cell lies under the top cell of a merge over several rows. */
  coveredFromAbove(row: number, column: number): boolean;
  /** True where the cell is the top of a merge over several rows. */
  topOfSeveralRows(row: number, column: number): boolean;
}

const NOTHING_MERGED: MergedCells = {
  cornerOf: (row, column) => [row, column],
  spanOf: () => 1,
  coveredFromAbove: () => false,
  topOfSeveralRows: () => false,
};

/** Looks merges up by cell; areas that reach past the cells in use are cut to them. */
export const mergedCells = ({ cells, merges }: ListSheet): MergedCells => {
  if (merges.length === 0) return NOTHING_MERGED;
  const width = cells.reduce((widest, row) => Math.max(widest, row.length), 0);
  const areas = new Map<number, MergedArea>();
  for (const area of merges) {
    const endRow = Math.min(area.row + area.rows, cells.length);
    const endColumn = Math.min(area.column + area.columns, width);
    for (let row = area.row; row < endRow; row++)
      for (let column = area.column; column < endColumn; column++) areas.set(row * width + column, area);
  }
  const areaAt = (row: number, column: number) =>
    column < width ? areas.get(row * width + column) : undefined;
  return {
    cornerOf: (row, column) => {
      const area = areaAt(row, column);
      return area ? [area.row, area.column] : [row, column];
    },
    spanOf: (row, column) => areaAt(row, column)?.columns ?? 1,
    coveredFromAbove: (row, column) => {
      const area = areaAt(row, column);
      return area !== undefined && area.row < row;
    },
    topOfSeveralRows: (row, column) => {
      const area = areaAt(row, column);
      return area !== undefined && area.rows > 1 && area.row === row;
    },
  };
};
