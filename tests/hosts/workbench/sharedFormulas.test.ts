import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import { relativeTo } from '../../../addin/hosts/workbench/grid/relativeTo';
import type { Area, CellInput } from '../../../addin/workbook/change';
import type { Snapshot } from '../../../addin/workbook/port';
import { openTestPage, type TestPage } from './openTestPage';

describe('a formula told from its own row', () => {
  test.each([
    ['=$B5*2', '=$B[0]*2'],
    ['=B5+B4+C$5+$D$5', '=B[0]+B[-1]+C$5+$D$5'],
    ["=SUM(B5:B7)+'Bed 5'!B5", "=SUM(B[0]:B[2])+'Bed 5'!B[0]"],
    ['=IF(B5="B5 ""B5""",Bed1!B5,LOG10(B5))', '=IF(B[0]="B5 ""B5""",Bed1!B[0],LOG10(B[0]))'],
    ['=AB1!B5+rate_B5+B5_rate+B5.5', '=AB1!B[0]+rate_B5+B5_rate+B5.5'],
  ])('%s', (formula, told) => expect(relativeTo(4, formula)).toBe(told));

  test.each(['=SUM(5:6)', '=SUM($5:5)', '=Roses[Bed]', '=@A5', '=A5#', '={1,2}'])(
    '%s is not told: what moves in it is not known',
    (formula) => expect(relativeTo(4, formula)).toBeUndefined(),
  );
});

describe('in the grid', () => {
  let bench: TestPage;
  beforeAll(async () => {
    bench = await openTestPage();
  });
  afterAll(() => bench?.close());

  const ROWS = 6;
  const area: Area = { sheet: 'Sheet1', row: 0, column: 0, rows: ROWS, columns: 3 };
  const column = async (at: number) => {
    const { blocks }: Snapshot = await bench.call('read', [area]);
    return blocks[0]!.cells.map((line) => [line[at]!.value, line[at]!.formula]);
  };
  const write = (row: number, col: number, cells: CellInput[][]) =>
    bench.call('apply', {
      title: 'Write',
      edits: [{ kind: 'write', sheet: 'Sheet1', row, column: col, cells }],
    });
  const filled = async () => {
    await bench.call('open');
    await write(
      0,
      0,
      Array.from({ length: ROWS }, (_, row) => [
        row + 1,
        { formula: `=A${row + 1}*2+$A$6` },
        { formula: `=FEED.DOSE(B${row + 1},2,"L/min","L")` },
      ]),
    );
  };
  const expected = (rows: readonly number[]) =>
    rows.map((value, row) => [value * 2 + 6, `=A${row + 1}*2+$A$6`]);
  const all = [1, 2, 3, 4, 5, 6];

  test('every row keeps its own formula and result, functions of ours too', async () => {
    await filled();
    expect(await column(1)).toEqual(expected(all));
    const doses = await column(2);
    expect(doses.map(([, formula]) => formula)).toEqual(
      all.map((row) => `=FEED.DOSE(B${row},2,"L/min","L")`),
    );
    for (const [row, [dose]] of doses.entries()) expect(dose).toBeCloseTo(((row + 1) * 2 + 6) / 30, 12);
  });

  test('a formula copied down 2,000 rows is taken apart once', async () => {
    await bench.call('open');
    const rows = 2_000;
    const counted: number = await bench.call('takenApart', {
      title: 'Copies',
      edits: [
        {
          kind: 'write',
          sheet: 'Sheet1',
          row: 0,
          column: 0,
          cells: Array.from({ length: rows }, (_, row) => [
            row,
            { formula: `=IF(A${row + 1}>0,A${row + 1}*2,"none")` },
            { formula: `=SUM(A$1:A${row + 1})+COUNT(A:A)` },
          ]),
        },
      ],
    });
    expect(counted).toBeGreaterThan(0);
    expect(counted).toBeLessThan(20);
    const { blocks }: Snapshot = await bench.call('read', [
      { sheet: 'Sheet1', row: 0, column: 1, rows, columns: 2 },
    ]);
    expect(blocks[0]!.cells.map(([one]) => one!.value)).toEqual(
      Array.from({ length: rows }, (_, row) => (row > 0 ? row * 2 : 'none')),
    );
    expect(blocks[0]!.cells.map(([, one]) => one!.value)).toEqual(
      Array.from({ length: rows }, (_, row) => (row * (row + 1)) / 2 + rows),
    );
  });

  test('the first one may be typed over, by a user and by a change', async () => {
    await filled();
    await write(0, 1, [[100]]);
    expect(await column(1)).toEqual([[100, undefined], ...expected(all).slice(1)]);
    await write(1, 1, [[{ formula: '=A2' }]]);
    expect((await column(1)).slice(1)).toEqual([[2, '=A2'], ...expected(all).slice(2)]);
    await bench.call('undo');
    await bench.call('undo');
    expect(await column(1)).toEqual(expected(all));
    await bench.call('redo');
    expect(await column(1)).toEqual([[100, undefined], ...expected(all).slice(1)]);
  });

  test('its row may be deleted and brought back', async () => {
    await filled();
    await bench.call('deleteRows', 'Sheet1', 0, 1);
    expect((await column(1)).slice(0, 5)).toEqual(
      [2, 3, 4, 5, 6].map((value, row) => [value * 2 + 6, `=A${row + 1}*2+$A$5`]),
    );
    await bench.call('undo');
    expect(await column(1)).toEqual(expected(all));
  });

  test('a value that they read is followed by each', async () => {
    await filled();
    await write(5, 0, [[10]]);
    expect((await column(1)).map(([value]) => value)).toEqual([12, 14, 16, 18, 20, 30]);
  });

  test('with a row put in between, each follows its own row', async () => {
    await filled();
    await bench.call('insertRows', 'Sheet1', 2, 1);
    expect((await column(1))[3]).toEqual([12, '=A4*2+$A$7']);
    await write(3, 0, [[30]]);
    expect((await column(1))[3]).toEqual([66, '=A4*2+$A$7']);
    await bench.call('undo');
    await bench.call('undo');
    expect(await column(1)).toEqual(expected(all));
  });

  test('a file has each formula in words, and opens to the same', async () => {
    await filled();
    const bytes: string = await bench.call('saveFile');
    await bench.call('openFile', 'list.xlsx', bytes);
    expect(await column(1)).toEqual(expected(all));
  });
});
