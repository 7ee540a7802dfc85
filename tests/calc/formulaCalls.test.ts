import { describe, expect, test } from 'vitest';

import { feedCalls } from '../../addin/hosts/calc/formulaCalls';
import { NotUnderstood, partsOf } from '../../addin/hosts/calc/formulaParts';
import { memoryWorkbook } from '../../addin/workbook/memoryWorkbook';
import type { Workbook } from '../../addin/workbook/port';
import type { RawArgument } from '../../functions';

const workbook = memoryWorkbook({
  sheets: {
    Try: [
      [0.7, 'gal', 2.8, 'gal/min', null],
      [24, 25, 26],
    ],
    'My rig': [[60]],
  },
});

/** Of Calc's own functions one that adds up, and one that takes no plain values. */
const compute = (name: string, args: readonly RawArgument[]): Promise<RawArgument | undefined> =>
  Promise.resolve(
    name === 'SUM' ? args.flat(2).reduce<number>((sum, value) => sum + Number(value), 0) : undefined,
  );

const calls = async (formula: string, from: Workbook = workbook) =>
  (await feedCalls(partsOf(formula), 'Try', from, compute)).map(({ name, args, outcome }) => ({
    name,
    args,
    ...outcome,
  }));

const argumentsOf = async (formula: string) => (await calls(formula)).map(({ args }) => args);

/** The dose that a formula hands to a function. */
const dose = async (words: string): Promise<RawArgument> =>
  (await argumentsOf(`=FEED.SECONDS(${words},"gal",2.8,"gal/min")`)).at(-1)![0];

test('cells, ranges, cells of other sheets and arguments left out are handed over as they are now', async () => {
  expect(await calls('=FEED.SECONDS(A1,B1,C1,D1)')).toEqual([
    { name: 'SECONDS', args: [0.7, 'gal', 2.8, 'gal/min'], value: 15 },
  ]);
  expect(await argumentsOf('=FEED.FLOWSPREAD(A2:C2)')).toEqual([[[[24, 25, 26]]]]);
  expect(await argumentsOf('=FEED.SECONDS(\'My rig\'!A1,"gal",E1,"gal/min",)')).toEqual([
    [60, 'gal', '', 'gal/min', null],
  ]);
});

test.each([
  ['A1*2', 1.4],
  ['-A1', -0.7],
  ['50%', 0.5],
  ['2^3^2', 64],
  ['E1+1', 1],
  ['TRUE+1', 2],
  ['1&"2"', '12'],
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
  ['IFS(A1>1,1,TRUE,2)', 2],
  ['IFS(A1>1,1)', { error: '#N/A' }],
  ['SUM(A2:C2)', 75],
  ['SUM(1/0,1)', { error: '#DIV/0!' }],
])('an argument that is computed, %s, is %s', async (words, value) => {
  expect(await dose(words)).toEqual(value);
});

test('the branch that is not taken makes no call; calls within calls come first', async () => {
  expect(await calls('=IF(A1>1,FEED.SECONDS(1,"gal",2,"gal/min"),7)')).toEqual([]);
  expect(await calls('=IFERROR(7,FEED.SECONDS(1,"gal",2,"gal/min"))')).toEqual([]);
  const nested = await calls('=FEED.DOSE(FEED.SECONDS(A1,B1,C1,D1),C1,D1,"gal")');
  expect(nested.map(({ name }) => name)).toEqual(['SECONDS', 'DOSE']);
  expect(nested[1]!.args[0]).toBe(15);
});

test('an error among the arguments goes through the function without a sentence', async () => {
  expect(await calls('=FEED.SECONDS(1/0,"gal",2.8,"gal/min")')).toEqual([
    { name: 'SECONDS', args: [{ error: '#DIV/0!' }, 'gal', 2.8, 'gal/min'], error: '#DIV/0!' },
  ]);
});

describe('what cannot be followed is said', () => {
  test.each([
    ['a function that gives back cells', 'OFFSET(A1,1,0)', '“OFFSET(…)”'],
    ['a name that is none of the workbook’s', 'nowhere', '“nowhere”'],
    ['a range that is computed with', 'A2:C2*2', 'computes with a whole range at once'],
    ['a text that is computed with', 'B1*2', '“gal”'],
  ])('%s', async (_what, words, said) => {
    await expect(dose(words)).rejects.toThrow(NotUnderstood);
    await expect(dose(words)).rejects.toThrow(said);
  });
});
