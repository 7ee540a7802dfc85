import { expect, test } from 'vitest';

import { cellsRead } from '../../../addin/workbook/formula/reads';
import type { Outline } from '../../../addin/workbook/port';

const area = (sheet: string, row: number, column: number, rows: number, columns: number) => ({
  sheet,
  row,
  column,
  rows,
  columns,
});

const outline: Outline = {
  sheets: [
    { name: 'Try', rows: 9, columns: 4, merges: [] },
    { name: 'My rig', rows: 4, columns: 2, merges: [] },
  ],
  names: { Rig_flow: area('My rig', 3, 1, 1, 1) },
  active: 'Try',
};

const read = (formula: string) =>
  cellsRead(formula, 'Try', outline).map(({ text, used }) => [
    text,
    used && [used.sheet, used.row, used.column, used.rows, used.columns],
  ]);

test('what a formula reads is told in its order, each spelling once, as far as anything stands there', () => {
  expect(read("=SUM(C9:B2)+A1+'MY RIG'!A1:B99+rig_flow+A1+Z99")).toEqual([
    ['C9:B2', ['Try', 1, 1, 8, 2]],
    ['A1', ['Try', 0, 0, 1, 1]],
    ["'MY RIG'!A1:B99", ['My rig', 0, 0, 4, 2]],
    ['rig_flow', ['My rig', 3, 1, 1, 1]],
    ['Z99', undefined],
  ]);
});

test('whole columns and rows end where the sheet does', () => {
  expect(read("=SUM(B:$C,2:3,'My rig'!A:A)")).toEqual([
    ['B:$C', ['Try', 0, 1, 9, 2]],
    ['2:3', ['Try', 1, 0, 2, 4]],
    ["'My rig'!A:A", ['My rig', 0, 0, 4, 1]],
  ]);
  const [columns] = cellsRead('=SUM(B:B)', 'Try', outline);
  expect(columns!.area.rows).toBe(1_048_576);
});

test('sheets, names and files that are not there, texts and functions are nothing that is read', () => {
  expect(read('=Gone!A1+nowhere+[1]Try!A1+"A1"+LOG10(7)+TRUE')).toEqual([]);
});
