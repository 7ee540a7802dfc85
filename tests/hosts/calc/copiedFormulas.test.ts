import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';

import { plannedWrites } from '../../../addin/hosts/calc/plannedWrites';
import type { Area, Change } from '../../../addin/workbook/change';
import type { Workbook } from '../../../addin/workbook/port';
import { workbookOf } from './books';
import { sharedOffice, type Office } from './office';

/* Columns of one formula copied down cross the pipe as their first formula, both ways. */

let office: Office;
beforeAll(async () => {
  office = await sharedOffice();
});
afterAll(async () => office.end());

const SHEET = 'Plants';
const ROWS = 30;
const column = (at: number, row = 4, rows = ROWS): Area => ({
  sheet: SHEET,
  row,
  column: at,
  rows,
  columns: 1,
});

let doc: string;
let workbook: Workbook;
beforeEach(async () => {
  doc = await office.ask<string>({ do: 'open_document' });
  workbook = workbookOf(office, doc);
  return () => office.ask({ do: 'close', doc });
});

const formulasIn = async (area: Area): Promise<(string | undefined)[]> =>
  (await workbook.read([area])).blocks[0]!.cells.map(([cell]) => cell!.formula);

const numbers = Array.from({ length: ROWS }, (_, row) => [row + 1]);
const copied = Array.from({ length: ROWS }, (_, row) => `=IF($A${row + 5}>$A$5,A${row + 4}*2,"first")`);
const change: Change = {
  title: 'Two columns',
  edits: [
    { kind: 'addSheet', sheet: SHEET },
    { kind: 'write', sheet: SHEET, row: 4, column: 0, cells: numbers },
    { kind: 'style', area: column(1), style: 'computed' },
    { kind: 'style', area: column(1, 14, 1), style: 'warning' },
    { kind: 'format', area: column(1, 20, 2), format: '0.00' },
    { kind: 'write', sheet: SHEET, row: 4, column: 1, cells: copied.map((formula) => [{ formula }]) },
  ],
};

describe('writing', () => {
  test('the column is one step, whatever the looks of its cells', () => {
    const written = plannedWrites(change).filter(({ op }) => op === 'filled' || op === 'formulas');
    expect(written).toMatchObject([{ op: 'filled', formulas: [copied[0]] }]);
  });

  test('every cell has its own formula and answer and keeps its look', async () => {
    await workbook.apply(change);
    const { blocks } = await workbook.read([column(1)]);
    expect(blocks[0]!.cells.map(([cell]) => cell)).toEqual(
      copied.map((formula, row) => ({ formula, value: row === 0 ? 'first' : row * 2 })),
    );
    const look = async (row: number) => {
      const at = { doc, sheet: SHEET, row, column: 1 };
      return JSON.stringify([
        await office.ask({ do: 'look', ...at }),
        await office.ask({ do: 'number_format', ...at }),
      ]);
    };
    const [plain, warned, below, rounded, last] = await Promise.all([4, 14, 15, 20, 33].map(look));
    expect(new Set([plain, warned, rounded]).size).toBe(3);
    expect(below).toBe(plain);
    expect(last).toBe(plain);
  });

  test('cells of the column that held something hold it again after undo', async () => {
    await workbook.apply({ ...change, edits: change.edits.slice(0, 3) });
    const before: Change = {
      title: 'A note',
      edits: [{ kind: 'write', sheet: SHEET, row: 10, column: 1, cells: [['mine']] }],
    };
    await workbook.apply(before);
    await workbook.apply({ title: 'Formulas', edits: change.edits.slice(5) });
    expect((await formulasIn(column(1)))[6]).toBe(copied[6]);
    await office.ask({ do: 'undo', doc });
    const { blocks } = await workbook.read([column(1)]);
    expect(blocks[0]!.cells.map(([cell]) => cell!.value)).toEqual(
      copied.map((_, row) => (row === 6 ? 'mine' : null)),
    );
  });

  test('a column that is not one formula copied down is written cell by cell', async () => {
    const odd = copied.with(7, '=$A12*3');
    const edits = [
      ...change.edits.slice(0, 2),
      { kind: 'write' as const, sheet: SHEET, row: 4, column: 1, cells: odd.map((formula) => [{ formula }]) },
    ];
    await workbook.apply({ title: 'Odd', edits });
    expect(await formulasIn(column(1))).toEqual(odd);
  });
});

describe('reading', () => {
  test.each([
    ['whole rows', (row: number) => `=SUM(${row + 101}:${row + 101})`],
    [
      'whole columns and names of functions that look like cells',
      (row: number) => `=LOG10(A${row + 5})+SUM(H:H)`,
    ],
  ])('a user’s copied column of %s is told as Calc has it', async (_what, formula) => {
    const cells = Array.from({ length: ROWS }, (_, row) => formula(row));
    await workbook.apply({ ...change, edits: change.edits.slice(0, 2) });
    const at = { doc, sheet: SHEET };
    await office.ask({ do: 'fill_down', ...at, cells: `C5:C${ROWS + 4}`, formula: cells[0]! });
    expect(await formulasIn(column(2))).toEqual(cells);
  });

  test('one formula typed over in the middle of a column is told', async () => {
    await workbook.apply(change);
    await office.ask({ do: 'put', doc, sheet: SHEET, cells: 'B20', formulas: [['=A20*5']] });
    expect(await formulasIn(column(1))).toEqual(copied.with(15, '=A20*5'));
  });
});
