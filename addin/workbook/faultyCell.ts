import { cellAddress, contains } from './address';
import type { Area } from './change';
import { cellsRead } from './formula/reads';
import type { Block, Workbook } from './port';

/** One cell, counted from the sheet's corner. */
export interface CellPlace {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
}

/** As many cells, or little more, are read in one go. */
const PIECE = 5_000;

/** An area in pieces of its rows, from the top. */
const piecesOf = (area: Area): Area[] => {
  const high = Math.max(1, Math.floor(PIECE / area.columns));
  return Array.from({ length: Math.ceil(area.rows / high) }, (_, at) => ({
    ...area,
    row: area.row + at * high,
    rows: Math.min(high, area.rows - at * high),
  }));
};

const firstFault = ({ area, cells }: Block, at: CellPlace): CellPlace | undefined => {
  for (const [r, line] of cells.entries())
    for (const [c, { error }] of line.entries()) {
      const place = { sheet: area.sheet, row: area.row + r, column: area.column + c };
      const itself = contains({ ...at, rows: 1, columns: 1 }, place.sheet, place.row, place.column);
      if (error !== undefined && !itself) return place;
    }
  return undefined;
};

/**
 * The first cell that a formula reads and that shows an error. A long range is read piece by piece, no further than
 * to there.
 *
 * @param at      where the formula stands: a reference without a sheet is to this one, and the cell itself does not count
 * @param formula English names, commas, Sheet!A1
 */
export const faultyCell = async (
  workbook: Workbook,
  at: CellPlace,
  formula: string,
): Promise<CellPlace | undefined> => {
  const pieces = cellsRead(formula, at.sheet, await workbook.outline()).flatMap(({ used }) =>
    used === undefined ? [] : piecesOf(used),
  );
  while (pieces.length > 0) {
    let cells = 0;
    const next = pieces.findIndex(
      ({ rows, columns }, index) => (cells += rows * columns) > PIECE && index > 0,
    );
    const { blocks } = await workbook.read(pieces.splice(0, next < 0 ? pieces.length : next));
    for (const block of blocks) {
      const place = firstFault(block, at);
      if (place !== undefined) return place;
    }
  }
  return undefined;
};

/** "B3", or "B3 on Rig" as seen from another sheet. */
export const placeInWords = ({ sheet, row, column }: CellPlace, seenFrom: string): string =>
  `${cellAddress(row, column)}${sheet === seenFrom ? '' : ` on ${sheet}`}`;
