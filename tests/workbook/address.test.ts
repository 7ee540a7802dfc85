import { expect, test } from 'vitest';
import { cellAddress, columnLetters, columnNumber, fixedReference } from '../../addin/workbook/address';

test.each([
  [0, 'A'],
  [25, 'Z'],
  [26, 'AA'],
  [701, 'ZZ'],
  [702, 'AAA'],
  [16_383, 'XFD'],
])('column %d is %s and back', (column, letters) => {
  expect(columnLetters(column)).toBe(letters);
  expect(columnNumber(letters)).toBe(column);
});

test('a cell is named as people read it', () => {
  expect(cellAddress(2, 1)).toBe('B3');
});

test.each([
  [{ sheet: 'Rig', row: 8, column: 1, rows: 1, columns: 1 }, 'Rig!$B$9'],
  [{ sheet: 'True', row: 0, column: 0, rows: 1, columns: 1 }, "'True'!$A$1"],
  [{ sheet: 'RC', row: 0, column: 0, rows: 1, columns: 1 }, "'RC'!$A$1"],
  [{ sheet: 'Bed2', row: 0, column: 0, rows: 1, columns: 1 }, "'Bed2'!$A$1"],
  [{ sheet: "Gran's roses", row: 0, column: 0, rows: 3, columns: 2 }, "'Gran''s roses'!$A$1:$B$3"],
])('a reference holds still, whatever the sheet is called', (area, reference) => {
  expect(fixedReference(area)).toBe(reference);
});
