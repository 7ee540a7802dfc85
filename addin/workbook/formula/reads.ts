import { columnNumber } from '../address';
import type { Area } from '../change';
import type { Outline } from '../port';
import { areaBetween, areaOfReference, sheetOf } from '../references';
import { areaNamed, inUse } from '../snapshot';
import { tokensOf } from './tokens';

/** Cells that a formula reads. */
export interface CellsRead {
  readonly kind: 'cells' | 'columns' | 'rows' | 'name';
  /** As the formula spells them: Rig!$B$4, B:B, Rig_flow. */
  readonly text: string;
  readonly area: Area;
  /** The part that holds anything; undefined where nothing does. */
  readonly used: Area | undefined;
}

/** As many rows and columns as a sheet can have. */
const LAST = { row: 1_048_575, column: 16_383 };

const spanned = (sheet: string, kind: 'columns' | 'rows', bare: string): Area => {
  const [a = '', b = ''] = bare.replaceAll('$', '').split(':');
  return kind === 'rows'
    ? areaBetween(sheet, { row: Number(a) - 1, column: 0 }, { row: Number(b) - 1, column: LAST.column })
    : areaBetween(sheet, { row: 0, column: columnNumber(a) }, { row: LAST.row, column: columnNumber(b) });
};

/**
 * What a formula reads, in its order, each spelling once: cells, whole columns and rows, names of the workbook. What
 * is not there is left out.
 *
 * @param home the sheet of the formula: a reference without a sheet is to this one
 */
export const cellsRead = (formula: string, home: string, outline: Outline): CellsRead[] => {
  const found = new Map<string, CellsRead>();
  const sheetNamed = (name: string) =>
    outline.sheets.find((sheet) => sheet.name.toLowerCase() === name.toLowerCase())?.name;
  const areaOf = (kind: CellsRead['kind'], text: string): Area | undefined => {
    if (kind === 'name') return areaNamed(outline, text);
    const bare = text.slice(text.lastIndexOf('!') + 1);
    const sheet = sheetNamed(sheetOf(text.slice(0, -bare.length), home));
    if (sheet === undefined) return undefined;
    return kind === 'cells' ? areaOfReference(bare, sheet) : spanned(sheet, kind, bare);
  };
  for (const { kind, text } of tokensOf(formula)) {
    if (kind !== 'cells' && kind !== 'columns' && kind !== 'rows' && kind !== 'name') continue;
    const area = areaOf(kind, text);
    if (area !== undefined) found.set(text, { kind, text, area, used: inUse(outline, area) });
  }
  return [...found.values()];
};
