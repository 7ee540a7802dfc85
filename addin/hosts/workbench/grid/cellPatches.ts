import type { ICellData, IStyleData } from '@univerjs/core';
import { WrapStrategy } from '@univerjs/core';

import type { Area, Edit } from '../../../workbook/change';
import { gridCell } from './cells';
import { LOOKS } from './looks';

type CellEdit = Extract<Edit, { kind: 'write' | 'format' | 'style' | 'wrap' }>;
/** What is to be set on the cells of one sheet: rows, then columns. */
export type Patches = Record<number, Record<number, ICellData>>;

export const isCellEdit = (edit: Edit): edit is CellEdit =>
  edit.kind === 'write' || edit.kind === 'format' || edit.kind === 'style' || edit.kind === 'wrap';

const GENERAL = /^general$/i;

const lookOf = (edit: Exclude<CellEdit, { kind: 'write' }>): IStyleData => {
  if (edit.kind === 'style') return LOOKS[edit.style];
  if (edit.kind === 'wrap') return { tb: WrapStrategy.WRAP };
  return { n: GENERAL.test(edit.format) ? null : { pattern: edit.format } };
};

/**
 * Everything that a change sets on cells, sheet by sheet, the later edit over the earlier one, so that a sheet is
 * written at one go.
 */
export const cellPatches = (edits: readonly Edit[]): Map<string, Patches> => {
  const sheets = new Map<string, Patches>();
  const patch = (sheet: string, row: number, column: number, next: ICellData): void => {
    const patches = sheets.get(sheet) ?? sheets.set(sheet, {}).get(sheet)!;
    const line = (patches[row] ??= {});
    const before = line[column];
    line[column] = before ? { ...before, ...next, ...styled(before.s, next.s) } : next;
  };
  const styled = (before: ICellData['s'], next: ICellData['s']): ICellData =>
    before && next && typeof before === 'object' && typeof next === 'object'
      ? { s: { ...before, ...next } }
      : next || before
        ? { s: next ?? before }
        : {};
  const each = (area: Area, next: ICellData): void => {
    for (let row = area.row; row < area.row + area.rows; row++)
      for (let column = area.column; column < area.column + area.columns; column++)
        patch(area.sheet, row, column, next);
  };
  for (const edit of edits.filter(isCellEdit))
    if (edit.kind === 'write')
      edit.cells.forEach((line, down) =>
        line.forEach((input, across) => {
          if (input !== undefined) patch(edit.sheet, edit.row + down, edit.column + across, gridCell(input));
        }),
      );
    else each(edit.area, { s: lookOf(edit) });
  return sheets;
};
