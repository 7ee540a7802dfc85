import type { Area } from '../change';
import type { Outline } from '../port';
import { areaNamed, inUse } from '../snapshot';
import { columnNumber } from '../address';
import { between, referenceOf, sheetOf } from './reference';
import { tokensOf, type Token } from './tokens';

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

const spanned = (sheet: string, { kind, text }: Token): Area => {
  const [a = '', b = ''] = text
    .slice(text.lastIndexOf('!') + 1)
    .replaceAll('$', '')
    .split(':');
  return kind === 'rows'
    ? between(sheet, { row: Number(a) - 1, column: 0 }, { row: Number(b) - 1, column: LAST.column })
    : between(sheet, { row: 0, column: columnNumber(a) }, { row: LAST.row, column: columnNumber(b) });
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
  const areaOf = (token: Token): Area | undefined => {
    const sheet = sheetNamed(sheetOf(token.text.slice(0, token.text.lastIndexOf('!') + 1)) ?? home);
    switch (token.kind) {
      case 'cells': {
        const { first, last = first } = referenceOf(token.text);
        return sheet === undefined ? undefined : between(sheet, first, last);
      }
      case 'columns':
      case 'rows':
        return sheet === undefined ? undefined : spanned(sheet, token);
      case 'name':
        return areaNamed(outline, token.text);
      default:
        return undefined;
    }
  };
  for (const token of tokensOf(formula)) {
    const area = areaOf(token);
    if (area !== undefined)
      found.set(token.text, {
        kind: token.kind as CellsRead['kind'],
        text: token.text,
        area,
        used: inUse(outline, area),
      });
  }
  return [...found.values()];
};
