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

/** One look over another; looks that were laid over one another before are so again without making a new one. */
const layered = () => {
  const known = new Map<object, Map<object, IStyleData>>();
  return (under: IStyleData, over: IStyleData): IStyleData => {
    const overs = known.get(under) ?? new Map<object, IStyleData>();
    const look = overs.get(over) ?? { ...under, ...over };
    known.set(under, overs.set(over, look));
    return look;
  };
};

/**
 * Everything that a change sets on cells, sheet by sheet, the later edit over the earlier one, so that a sheet is
 * written at one go.
 */
export const cellPatches = (edits: readonly Edit[]): Map<string, Patches> => {
  const sheets = new Map<string, Patches>();
  const laid = layered();
  const cellIn = (sheet: string, row: number, column: number): ICellData => {
    const patches = sheets.get(sheet) ?? sheets.set(sheet, {}).get(sheet)!;
    return ((patches[row] ??= {})[column] ??= {});
  };
  const dress = ({ sheet, row, column, rows, columns }: Area, look: IStyleData): void => {
    for (let down = 0; down < rows; down++)
      for (let across = 0; across < columns; across++) {
        const cell = cellIn(sheet, row + down, column + across);
        cell.s = cell.s && typeof cell.s === 'object' ? laid(cell.s, look) : look;
      }
  };
  for (const edit of edits.filter(isCellEdit))
    if (edit.kind === 'write')
      edit.cells.forEach((line, down) =>
        line.forEach((input, across) => {
          if (input !== undefined)
            Object.assign(cellIn(edit.sheet, edit.row + down, edit.column + across), gridCell(input));
        }),
      );
    else dress(edit.area, lookOf(edit));
  return sheets;
};
