import { describe, expect, test } from 'vitest';
import { readCount } from '../../../addin/core/adopt/plantCount';

describe('how many plants a cell says', () => {
  test.each([
    [3, 3],
    ['', 1],
    [null, 1],
    ['\u00a0', 1],
    ['3', 3],
    ['x3', 3],
    ['3x', 3],
    ['× 3', 3],
    ['3 plants', 3],
    ['3pcs', 3],
    ['3 Stück', 3],
    ['three', 3],
    ['drei', 3],
    ['a pair', 2],
    ['a dozen', 12],
    ['2 dozen', 24],
    ['2 + 1', 3],
    ['2 & 1', 3],
    ['two and one', 3],
    ['2.0', 2],
    ['1,200', 1200],
    ['２', 2],
    [10_000, 10_000],
  ])('%j is %d', (cell, count) => {
    expect(readCount(cell)).toEqual({ count, approximate: false });
  });

  test.each([
    ['~5', 5],
    ['ca. 5', 5],
    ['about five', 5],
    ['5?', 5],
  ])('“%s” is about %d', (cell, count) => {
    expect(readCount(cell)).toEqual({ count, approximate: true });
  });

  test.each([
    [0, '“0” is given as the number of plants; a row needs at least 1'],
    ['0', '“0” is given as the number of plants; a row needs at least 1'],
    [-2, '“-2” is given as the number of plants; a row needs at least 1'],
    ['−2', '“−2” is given as the number of plants; a row needs at least 1'],
    [2.5, '“2.5” is not a whole number of plants'],
    ['2,5', '“2,5” is not a whole number of plants'],
    [10_001, '“10001” plants in one row are more than 10,000'],
    [1e308, '“1e+308” plants in one row are more than 10,000'],
    ['some', '“some” is not a number of plants'],
    ['5-6', '“5-6” is not a number of plants'],
    ['1/2', '“1/2” is not a number of plants'],
    ['3 (2 dead)', '“3 (2 dead)” is not a number of plants'],
    ['=1+1', '“=1+1” is not a number of plants'],
    ['-', '“-” is not a number of plants'],
    ['plants', '“plants” is not a number of plants'],
    [true, '“TRUE” is not a number of plants'],
    ['9'.repeat(500), `“${'9'.repeat(59)}…” is not a number of plants`],
  ])('%j is not read, and says why', (cell, unread) => {
    expect(readCount(cell)).toEqual({ unread });
  });
});
