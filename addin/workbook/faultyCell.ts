import { cellAddress, contains, sheetPrefix } from './address';
import type { Area } from './change';
import type { Outline, Workbook } from './port';
import { areaOfReference } from './references';
import { areaNamed, sheetNamed } from './snapshot';

/** One cell, counted from the sheet's corner. */
export interface CellPlace {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
}

const TEXT = '"(?:[^"]|"")*"';
const SHEET = String.raw`(?:'(?:[^']|'')+'|[\p{L}_][\p{L}\p{N}_.]*)!`;
const CELL = String.raw`\$?[A-Z]{1,3}\$?\d{1,7}`;
const COLUMN = String.raw`\$?[A-Z]{1,3}`;
const ENDS = String.raw`(?![\p{L}\p{N}_.]|\s*[(!])`;
const USED = new RegExp(
  `${TEXT}|(${SHEET})?(?:(${CELL}(?::${CELL})?)|(${COLUMN}):(${COLUMN}))${ENDS}|([\\p{L}_][\\p{L}\\p{N}_.]*)${ENDS}`,
  'giu',
);

/** The part of an area that holds anything; undefined where nothing does, or where its sheet is not there. */
const inUse = (area: Area | undefined, outline: Outline): Area | undefined => {
  const sheet = area && sheetNamed(outline, area.sheet);
  if (!area || !sheet) return undefined;
  const rows = Math.min(area.rows, sheet.rows - area.row);
  const columns = Math.min(area.columns, sheet.columns - area.column);
  return rows > 0 && columns > 0 ? { ...area, rows, columns } : undefined;
};

/** What a formula reads, in its order: cells, whole columns, workbook names. */
const areasUsed = (formula: string, home: string, outline: Outline): Area[] =>
  [...formula.matchAll(USED)].flatMap(([, sheet, cells, first, last, name]) => {
    const prefix = sheet ?? sheetPrefix(home);
    if (name !== undefined) return inUse(areaNamed(outline, name), outline) ?? [];
    if (cells !== undefined) return inUse(areaOfReference(prefix + cells), outline) ?? [];
    if (first === undefined || last === undefined) return [];
    return inUse(areaOfReference(`${prefix}${first}1:${last}${Number.MAX_SAFE_INTEGER}`), outline) ?? [];
  });

/**
 * The first cell that a formula reads and that shows an error.
 *
 * @param at      where the formula stands: a reference without a sheet is to this one, and the cell itself does not count
 * @param formula English names, commas, Sheet!A1
 */
export const faultyCell = async (
  workbook: Workbook,
  at: CellPlace,
  formula: string,
): Promise<CellPlace | undefined> => {
  const areas = areasUsed(formula, at.sheet, await workbook.outline());
  if (areas.length === 0) return undefined;
  const { blocks } = await workbook.read(areas);
  for (const { area, cells } of blocks)
    for (const [r, line] of cells.entries())
      for (const [c, { error }] of line.entries()) {
        const place = { sheet: area.sheet, row: area.row + r, column: area.column + c };
        const itself = contains({ ...at, rows: 1, columns: 1 }, place.sheet, place.row, place.column);
        if (error !== undefined && !itself) return place;
      }
  return undefined;
};

/** "B3", or "B3 on the sheet “Rig”" as seen from another sheet. */
export const placeInWords = ({ sheet, row, column }: CellPlace, seenFrom: string): string =>
  `${cellAddress(row, column)}${sheet === seenFrom ? '' : ` on the sheet “${sheet}”`}`;
