import { describe, expect, test } from 'vitest';
import {
  moveFormulaDown,
  renameInFormula,
  shiftArea,
  shiftFormula,
  type Shift,
} from '../../addin/workbook/memory/shift';
import { memoryWorkbook } from '../../addin/workbook/memoryWorkbook';

const rows = (at: number, count: number, sheet = 'Plants'): Shift => ({ sheet, axis: 'row', at, count });
const columns = (at: number, count: number, sheet = 'Plants'): Shift => ({
  sheet,
  axis: 'column',
  at,
  count,
});
const area = (row: number, size: number) => ({ sheet: 'Plants', row, column: 1, rows: size, columns: 2 });

describe('areas follow rows and columns that are put in or taken out', () => {
  test.each([
    ['above', 2, 3, area(8, 4)],
    ['within', 6, 2, area(5, 6)],
    ['just below', 9, 2, area(5, 4)],
    ['taken above', 0, -2, area(3, 4)],
    ['taken across the top', 4, -3, area(4, 2)],
    ['taken within', 6, -1, area(5, 3)],
    ['taken across the bottom', 7, -9, area(5, 2)],
    ['taken whole', 4, -9, undefined],
  ])('%s', (_where, at, count, expected) => {
    expect(shiftArea(area(5, 4), rows(at, count))).toEqual(expected);
  });

  test('another sheet is left alone', () => {
    expect(shiftArea(area(5, 4), rows(0, 3, 'Beds'))).toEqual(area(5, 4));
  });
});

describe('formulas follow as a spreadsheet makes them follow', () => {
  test.each([
    ['=A6*2', rows(0, 1), '=A7*2'],
    ['=$A$6+B2', rows(3, 2), '=$A$8+B2'],
    ['=SUM(A5:A9)', rows(6, 2), '=SUM(A5:A11)'],
    ['=SUM(A5:A9)', rows(4, -2), '=SUM(A5:A7)'],
    ['=A6', rows(5, -1), '=#REF!'],
    ['=B1&"A6, A7"', rows(0, 1), '=B2&"A6, A7"'],
    ['=Beds!A6+A6', rows(0, 1), '=Beds!A6+A7'],
    ['=AB3', columns(1, 1), '=AC3'],
    ['=FEED.FILLS(C3,Rig_barrel,"gal")', columns(0, 1), '=FEED.FILLS(D3,Rig_barrel,"gal")'],
    ['=LOG10(A1)', columns(0, 1), '=LOG10(B1)'],
  ])('%s', (formula, shift, expected) => {
    expect(shiftFormula(formula, 'Plants', shift)).toBe(expected);
  });

  test('a renamed sheet is renamed in formulas, not in their texts', () => {
    expect(renameInFormula('=Beds!A1&"Beds!A1"', 'Beds', "Gran's")).toBe(`='Gran''s'!A1&"Beds!A1"`);
  });

  test('a formula copied down moves its rows, not its fixed ones', () => {
    expect(moveFormulaDown('=$B5*C$2+SUM($A$1:A5)', 3)).toBe('=$B8*C$2+SUM($A$1:A8)');
  });
});

test('rows that the user sorts take their formulas along', () => {
  const workbook = memoryWorkbook({
    sheets: { List: [['name'], ['b', { formula: '=A2&"!"' }], ['a', { formula: '=A3&"!"' }]] },
  });
  workbook.user.reorderRows('List', 1, [1, 0]);
  expect(workbook.cell('List', 1, 0).value).toBe('a');
  expect(workbook.cell('List', 1, 1).formula).toBe('=A2&"!"');
  expect(workbook.cell('List', 2, 1).formula).toBe('=A3&"!"');
});

test('a name whose sheet is deleted points nowhere and is left out of the outline', async () => {
  const workbook = memoryWorkbook({ sheets: { Keep: [[1]], Rig: [[60]] } });
  const area = { sheet: 'Rig', row: 0, column: 0, rows: 1, columns: 1 };
  await workbook.apply({ title: 'Name it', edits: [{ kind: 'name', name: 'Rig_barrel', area }] });
  workbook.user.deleteSheet('Rig');
  expect((await workbook.outline()).names).toEqual({});
  expect(() => workbook.user.deleteSheet('Keep')).toThrow('The last sheet');
});
