import { describe, expect, test } from 'vitest';

import { cellsRead } from '../../../addin/workbook/formula/reads';
import { treeOf } from '../../../addin/workbook/formula/tree';
import { memoryWorkbook } from '../../../addin/workbook/memoryWorkbook';
import { readCells } from '../../../taskpane/cell/cellValues';
import { workOut, type Worth } from '../../../taskpane/cell/workOut';
import { call } from '../../../functions';

const workbook = memoryWorkbook({
  sheets: {
    Try: [
      [0.7, 'gal', 2.8, 'gal/min', null],
      [24, 25, 26],
      ['Large', 'small', 'LARGE'],
    ],
  },
});

const worked = async (formula: string): Promise<Worth> => {
  const reads = cellsRead(formula, 'Try', await workbook.outline());
  const held = await readCells(workbook, reads);
  return workOut(treeOf(formula)!, new Map(held.map((cells) => [cells.text, cells])));
};

describe('a part of a formula', () => {
  test.each([
    ['A1*2', 1.4],
    ['-A1', -0.7],
    ['50%', 0.5],
    ['2^3^2', 64],
    ['E1+1', 1],
    ['TRUE+1', 2],
    ['1&"2"', '12'],
    ['0.1+0.2&TRUE', '0.3TRUE'],
    ['1/0', { error: '#DIV/0!' }],
    ['IF(A1>0.5,1,2)', 1],
    ['IF(B1="GAL",1,2)', 1],
    ['IF(E1="",1,2)', 1],
    ['IF(E1=0,1,2)', 1],
    ['IF("a">5,1,2)', 1],
    ['IF(A1<>0.7,1,2)', 2],
    ['IF(A1>=0.7,1)', 1],
    ['IF(A1<0.7,1)', false],
    ['IFERROR(1/0,3)', 3],
    ['IFNA(#N/A,4)', 4],
    ['IFNA(1/0,4)', { error: '#DIV/0!' }],
    ['IFS(A1>1,1,TRUE(),2)', 2],
    ['IFS(A1>1,1)', { error: '#N/A' }],
    ['AND(A1>0,NOT(A1>1))', true],
    ['OR(A1>1,FALSE())', false],
    ['SUM(A2:C2,5)', 80],
    ['SUM(A1:E1)', 3.5],
    ['SUM(1/0,1)', { error: '#DIV/0!' }],
    ['MIN(A2:C2)+MAX(A2:C2)', 50],
    ['COUNT(A1:E1)', 2],
    ['ISNUMBER(MATCH("x",A3:C3,0))', false],
    ['ISNUMBER(1/0)', false],
    ['IFERROR(NA(),1)', 1],
    ['INDEX({5,#N/A},1)+COUNT({5,#N/A})', 6],
    ['ROUND(1.005,2)', 1.01],
    ['ROUND(-2.5,0)', -3],
    ['ROUNDUP(24.1,-1)', 30],
    ['ROUNDDOWN(2.8,0)', 2],
    ['INT(-0.5)+MOD(-1,3)+ABS(-1)', 2],
    ['INDEX(A2:C2,2)', 25],
    ['INDEX(A1:C2,2,3)', 26],
    ['INDEX({1;2;3},MATCH("SMALL",A3:C3,0))', 2],
    ['MATCH("huge",A3:C3,0)', { error: '#N/A' }],
    ['INDEX(FEED.FILLPLAN(100,60,"gal"),2,1)', 2],
  ])('%s comes to what it is in a spreadsheet', async (formula, value) => {
    expect((await worked(`=${formula}`)).value).toEqual(value);
  });

  test.each([
    ['a function that is not known here', 'OFFSET(A1,1,0)'],
    ['a name that is none of the workbook’s', 'nowhere'],
    ['a range that is computed with', 'A2:C2*2'],
    ['a text that is computed with', 'B1*2'],
    ['a text that may count as a number', 'SUM("5",1)'],
    ['a condition on a range', 'AND(A2:C2)'],
    ['a search for signs that stand for others', 'MATCH("l*",A3:C3,0)'],
    ['a search among sorted cells', 'MATCH(25,A2:C2)'],
    ['a place outside the range', 'INDEX(A2:C2,4)'],
    ['a whole line of a range', 'INDEX(A1:C2,2,0)'],
    ['what depends on one of these', 'IF(OFFSET(A1,1,0)>1,2,3)'],
  ])('%s is not worked out: %s', async (_what, formula) => {
    expect((await worked(`=${formula}`)).value).toBeUndefined();
  });
});

const argumentsOf = async (formula: string) =>
  (await worked(formula)).calls.map(({ name, args }) => [name, ...args.map(({ value }) => value)]);

test('ranges, blank cells and arguments left out are handed over as the functions take them', async () => {
  expect(await argumentsOf('=FEED.SECONDS(A1,"gal",E1,D1,)')).toEqual([
    ['SECONDS', 0.7, 'gal', '', 'gal/min', null],
  ]);
  expect(await argumentsOf('=FEED.FLOWSPREAD(A2:C2)+FEED.FLOWSPREAD({24,25})')).toEqual([
    ['FLOWSPREAD', [[24, 25, 26]]],
    ['FLOWSPREAD', [[24, 25]]],
  ]);
});

test('whole columns are handed over alike, as far as anything stands in one of them; two rows stay two', async () => {
  expect(await argumentsOf('=FEED.NEED(A:A,E:E,"gal","gal")+FEED.FLOWSPREAD(E8:E9)')).toEqual([
    ['NEED', [[0.7], [24], ['Large']], [[''], [''], ['']], 'gal', 'gal'],
    ['FLOWSPREAD', [[''], ['']]],
  ]);
});

test('an error among the arguments goes through the function without a sentence', async () => {
  const { calls, value } = await worked('=FEED.SECONDS(1/0,"gal",2.8,"gal/min")');
  expect(value).toEqual({ error: '#DIV/0!' });
  expect(calls[0]!.outcome).toEqual({ error: '#DIV/0!' });
});

test('a function that is none of ours is refused as a cell would be', async () => {
  expect((await worked('=FEED.WATER(1)')).calls[0]!.outcome).toEqual(call('WATER', [1]));
});
