import type { Area } from '../../../workbook/change';
import { isTooLarge } from '../failures';

/** A piece of a sheet whose merged cells are asked for. */
export interface Piece {
  readonly name: string;
  readonly sheet: Excel.Worksheet;
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
}

const rangeOf = ({ sheet, row, column, rows, columns }: Piece): Excel.Range =>
  sheet.getRangeByIndexes(row, column, rows, columns);

const halves = (piece: Piece): [Piece, Piece] => {
  const rows = piece.rows >> 1;
  return [
    { ...piece, rows },
    { ...piece, row: piece.row + rows, rows: piece.rows - rows },
  ];
};

const known = (areas: readonly Area[]): Area[] => [
  ...new Map(areas.map((area) => [JSON.stringify(area), area])).values(),
];

const mergesIn = async (context: Excel.RequestContext, pieces: readonly Piece[]): Promise<Area[]> => {
  const merged = pieces.map((piece) => {
    const areas = rangeOf(piece).getMergedAreasOrNullObject();
    areas.load('areaCount');
    return { piece, areas };
  });
  await context.sync();
  const found = merged.filter(({ areas }) => !areas.isNullObject);
  if (found.length === 0) return [];
  for (const { areas } of found)
    areas.areas.load('items/rowIndex,items/columnIndex,items/rowCount,items/columnCount');
  await context.sync();
  return found.flatMap(({ piece, areas }) =>
    areas.areas.items.map(({ rowIndex, columnIndex, rowCount, columnCount }) => ({
      sheet: piece.name,
      row: rowIndex,
      column: columnIndex,
      rows: rowCount,
      columns: columnCount,
    })),
  );
};

/**
 * The merged cells of the pieces. The program tells of 512 in a piece at most and fails beyond, so a piece that fails
 * is asked for in halves.
 */
export const readMerges = async (
  context: Excel.RequestContext,
  pieces: readonly Piece[],
): Promise<Area[]> => {
  if (pieces.length === 0) return [];
  try {
    return await mergesIn(context, pieces);
  } catch (error) {
    const [first, ...others] = pieces;
    const single = first !== undefined && others.length === 0;
    if (!first || (single && first.rows < 2) || isTooLarge(error)) throw error;
    const [near, far] = single ? halves(first).map((half) => [half]) : [[first], others];
    return known([...(await readMerges(context, near!)), ...(await readMerges(context, far!))]);
  }
};
