import { beforeAll, expect, test } from 'vitest';

import { tokensOf } from '../../addin/workbook/formula/tokens';
import { treeOf } from '../../addin/workbook/formula/tree';
import { memoryWorkbook } from '../../addin/workbook/memoryWorkbook';
import type { Snapshot, Workbook } from '../../addin/workbook/port';
import { cellsOf, usedArea } from '../../addin/workbook/snapshot';
import { makeSample } from '../../sample-workbooks/makeSample';
import { explainCell, type CellExplanation } from '../../taskpane/cell/explainCell';
import { calculatingWorkbook } from '../taskpane/calculatingWorkbook';

/* Every formula that the program writes into the sample: how long it is, and that it can be explained. */

/** Characters; may only be lowered. */
const LONGEST = 160;
const MEDIAN = 60;
/** Formulas with a FEED function whose steps are not told. */
const NOT_TOLD = 0;
const NAMED = 5;

interface Placed {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly formula: string;
}

let formulas: Placed[];
/** The sample as it was once read: its formulas are not calculated again for every cell. */
let workbook: Workbook;

beforeAll(async () => {
  const calculating = calculatingWorkbook(memoryWorkbook({ sheets: { 'My roses': [['Rose']] } }));
  const sample = makeSample(calculating);
  await sample.garden();
  await sample.tanks();
  const outline = await calculating.outline();
  const areas = outline.sheets.flatMap(({ name }) => usedArea(outline, name) ?? []);
  const snapshot: Snapshot = await calculating.read(areas);
  workbook = {
    outline: () => Promise.resolve(snapshot),
    read: (wanted) =>
      Promise.resolve({
        ...snapshot,
        blocks: (typeof wanted === 'function' ? wanted(snapshot) : wanted).map((area) => ({
          area,
          cells: cellsOf(snapshot, area),
        })),
      }),
    apply: () => Promise.reject(new Error('The sample is only read here.')),
  };
  formulas = snapshot.blocks.flatMap(({ area, cells }) =>
    cells.flatMap((line, row) =>
      line.flatMap(({ formula }, column) =>
        formula === undefined
          ? []
          : [{ sheet: area.sheet, row: area.row + row, column: area.column + column, formula }],
      ),
    ),
  );
}, 240_000);

test('are no longer than they were', () => {
  const byLength = [...formulas].sort((a, b) => b.formula.length - a.formula.length);
  const lengths = byLength.map(({ formula }) => formula.length);
  const median = lengths[Math.floor(lengths.length / 2)]!;
  const over = lengths.filter((length) => length > 160).length;
  console.log(`${lengths.length} formulas; ${over} over 160 characters; median ${median}. The longest:`);
  const different = new Map(byLength.map((placed) => [placed.formula.replace(/\d+/g, '0'), placed]));
  for (const { sheet, row, column, formula } of [...different.values()].slice(0, NAMED))
    console.log(`${formula.length}  ${sheet} row ${row + 1}, column ${column + 1}: ${formula}`);
  expect(lengths.length).toBeGreaterThan(100);
  expect(lengths[0]).toBeLessThanOrEqual(LONGEST);
  expect(median).toBeLessThanOrEqual(MEDIAN);
});

test('compare with no number that the workbench writes with an exponent: it takes one for a text', () => {
  const tiny = /[<>=]-?(?:[\d.]+E|0?\.0{6})/i;
  expect(tiny.test('=A1>1E-9')).toBe(true);
  expect(formulas.filter(({ formula }) => tiny.test(formula))).toEqual([]);
});

test('are all read to their end', () => {
  const unread = formulas.filter(({ formula }) => treeOf(formula) === undefined);
  expect(unread).toEqual([]);
});

test('are all explained by their cells and the steps of their functions', async () => {
  const told: (readonly [Placed, CellExplanation])[] = [];
  for (const placed of formulas)
    told.push([placed, (await explainCell(workbook, { ...placed, shows: '' }))!]);
  const untold = told.filter(([, { working }]) => working.some((line) => line.includes('not told')));
  for (const [{ formula }] of untold) console.log(`Not told in full: ${formula}`);
  expect(untold.length).toBeLessThanOrEqual(NOT_TOLD);
  const withoutCells = told.filter(
    ([{ formula }, { cells, working }]) =>
      tokensOf(formula).some(({ kind }) => kind === 'cells') && cells.length + working.length === 0,
  );
  expect(withoutCells.map(([{ formula }]) => formula)).toEqual([]);
});
