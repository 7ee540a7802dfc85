import { beforeEach, describe, expect, test } from 'vitest';

import type { Area, CellInput } from '../../../addin/workbook/change';
import { memoryWorkbook, type MemoryWorkbook } from '../../../addin/workbook/memoryWorkbook';
import type { Workbook } from '../../../addin/workbook/port';
import { explainCell, type CellExplanation } from '../../../taskpane/cell/explainCell';
import { calculatingWorkbook } from '../calculatingWorkbook';

/* Values are those of the workbench's own formula engine. */

let memory: MemoryWorkbook;
let workbook: Workbook;
/** The cells that were asked for. */
let asked: Area[];
beforeEach(() => {
  memory = memoryWorkbook({
    sheets: {
      Try: [
        [0.7, 'gal', 2.8, 'gal/min', null],
        [24, 25, 26],
      ],
      Doses: [
        ['Size', 'Dose'],
        ['Large', 0.75],
        ['Small', 0.25],
        ['None', null],
      ],
    },
  });
  const calculating = calculatingWorkbook(memory);
  asked = [];
  workbook = {
    ...calculating,
    read: async (wanted) => {
      const snapshot = await calculating.read(wanted);
      asked.push(...snapshot.blocks.map(({ area }) => area));
      return snapshot;
    },
  };
});

const at = { sheet: 'Try', row: 5, column: 5 };

/** A sheet of as many rows; column A holds 1 in each, column B thousandths. */
const long = async (rows: number): Promise<void> => {
  const cells = Array.from({ length: rows }, (_, row) => [1, row / 1_000]);
  await memory.apply({
    title: 'Long',
    edits: [
      { kind: 'addSheet', sheet: 'Long' },
      { kind: 'write', sheet: 'Long', row: 0, column: 0, cells },
    ],
  });
};

const put = (sheet: string, row: number, column: number, input: CellInput): Promise<void> =>
  memory.apply({ title: 'Put', edits: [{ kind: 'write', sheet, row, column, cells: [[input]] }] });

const explained = async (formula: string, more: object = {}): Promise<CellExplanation> => {
  await put('Try', 5, 5, { formula });
  return (await explainCell(workbook, { ...at, shows: '?', ...more }))!;
};

test('a FEED function is told by its arguments’ cells, its steps and its source', async () => {
  expect(await explained('=FEED.SECONDS(Doses!B2,B1,C1,"gal/min")')).toEqual({
    ...at,
    formula: '=FEED.SECONDS(Doses!B2,B1,C1,"gal/min")',
    shows: '?',
    cells: [],
    working: [
      'SECONDS: Seconds to hold the wand on one plant.',
      'dose: 0.75, from B2 on Doses',
      'dose_unit: "gal", from B1',
      'flow: 2.8, from C1',
      expect.stringContaining('0.75 gal ÷ 2.8 gal/min × 60 s/min = 16.0714 s'),
      expect.stringMatching(/^Source: /),
    ],
  });
});

test('arithmetic and functions of the spreadsheet are told by the cells that go in and what they hold', async () => {
  await long(60);
  expect((await explained('=ROUND(A1*C1,0)+SUM(A2:C2)+E1')).cells).toEqual([
    'A1: 0.7',
    'C1: 2.8',
    'A2:C2: 24, 25 and 26',
    'E1: nothing',
  ]);
  expect((await explained('=SUMPRODUCT(Long!A1:A60*Long!B1:B60)')).cells).toEqual([
    'A1:A60 on Long: 60 cells, numbers from 1 to 1',
    'B1:B60 on Long: 60 cells, numbers from 0 to 0.059',
  ]);
  expect((await explained('=1+1')).cells).toEqual([]);
});

test('functions within functions come first, and where a computed argument comes from is told', async () => {
  const { cells, working } = await explained(
    '=2*FEED.DOSE(FEED.SECONDS(A1*2,B1,C1,D1)+1,C1,D1,"gal")+IF(A1>0.5,A2,B2)',
  );
  expect(working.filter((line) => /^(SECONDS|DOSE|dose|seconds):/.test(line))).toEqual([
    'SECONDS: Seconds to hold the wand on one plant.',
    'dose: 1.4, from A1 (0.7)',
    'DOSE: Finished solution that a count gives to one plant.',
    'seconds: 31, from SECONDS',
  ]);
  expect(cells).toEqual(['A1: 0.7', 'A2: 24']);
});

test('a name is told with the cell that it stands for', async () => {
  const flow = { sheet: 'Try', row: 0, column: 2, rows: 1, columns: 1 };
  await memory.apply({ title: 'Name', edits: [{ kind: 'name', name: 'Rig_flow', area: flow }] });
  const outline = await workbook.outline();
  expect(outline.names).toHaveProperty('Rig_flow');
  const { working } = await explained('=FEED.SECONDS(1,"gal",Rig_flow,"gal/min")');
  // The engine behind this test knows no names, so the cell shows an error and nothing more is sure.
  expect(working).toEqual([]);
  expect((await explained('=Rig_flow')).cells).toEqual(['Rig_flow in C1: 2.8']);
});

describe('a branch that is not taken', () => {
  test('is not told', async () => {
    const taken = await explained('=IF(A1>1,FEED.SECONDS(B2,"gal",2,"gal/min"),A2)');
    expect(taken).toMatchObject({ cells: ['A1: 0.7', 'A2: 24'], working: [] });
    const caught = await explained('=IFERROR(A2,FEED.SECONDS(1,"gal",2,"gal/min"))');
    expect(caught).toMatchObject({ cells: ['A2: 24'], working: [] });
  });

  test('is told by its cells where nobody knows which one it is', async () => {
    const { cells, working } = await explained('=IF(LEN(B1)>1,FEED.SECONDS(A2,"gal",2,"gal/min"),B2)');
    expect(cells).toEqual(['B1: "gal"', 'A2: 24', 'B2: 25']);
    expect(working).toEqual([]);
  });
});

describe('what cannot be followed for sure is said, not guessed', () => {
  test('an argument by a function that is not known here', async () => {
    const { working } = await explained('=FEED.SECONDS(LEN(B1)/10,"gal",C1,"gal/min")');
    expect(working).toEqual([
      'SECONDS: Seconds to hold the wand on one plant.',
      'dose: not worked out here, from B1 ("gal")',
      'flow: 2.8, from C1',
      'The steps are not told, because dose cannot be followed here. Put it into a cell of its own to see them.',
    ]);
  });

  test('a formula that is not known as a whole', async () => {
    const { cells, working } = await explained('=SUM((A1,C1))');
    expect(cells).toEqual(['A1: 0.7', 'C1: 2.8']);
    expect(working).toEqual(['Part of this formula cannot be followed here, so only its cells are told.']);
  });

  test('a value that is another one than the cell’s', async () => {
    await put('Try', 5, 5, { formula: '=FEED.SECONDS(A1,"gal",C1,"gal/min")' });
    const stale: Workbook = {
      ...workbook,
      read: async (areas) => {
        const snapshot = await workbook.read(areas);
        const blocks = snapshot.blocks.map((block) =>
          block.area.row === 5 ? { ...block, cells: [[{ ...block.cells[0]![0]!, value: 16 }]] } : block,
        );
        return { ...snapshot, blocks };
      },
    };
    expect(await explainCell(stale, { ...at, shows: '16' })).toMatchObject({
      cells: ['A1: 0.7', 'C1: 2.8'],
      working: ['How it was worked out is not told, because it comes to something else here.'],
    });
  });
});

describe('a long range', () => {
  test('is not read for an explanation, and is told by how many cells it has', async () => {
    await long(6_000);
    const { working, cells } = await explained(
      '=FEED.NEED(Long!A1:A6000,Long!B1:B6000,"gal","gal")+SUM(Long!B:B)',
    );
    expect(working.slice(1, 3)).toEqual([
      'plants: 6,000 cells, too many to follow here, from A1:A6000 on Long',
      'dose: 6,000 cells, too many to follow here, from B1:B6000 on Long',
    ]);
    expect(working[3]).toMatch(/^The steps are not told, because plants and dose cannot be followed here/);
    expect(cells).toEqual(['B:B on Long: 6,000 cells, too many to follow here']);
    expect(asked.filter(({ sheet }) => sheet === 'Long')).toEqual([]);
  });

  test('that is mostly empty is read as far as anything stands there', async () => {
    const whole = await explained('=SUM(Doses!B:B)');
    expect(whole.cells).toEqual(['B:B on Doses: "Dose", 0.75, 0.25 and nothing']);
    const need = await explained('=FEED.NEED(Doses!B2:B5000,Doses!B2:B5000,"gal","gal")');
    expect(need.working).toContain(
      'plants: 4,999 cells, 2 of them filled, numbers from 0.25 to 0.75, from B2:B5000 on Doses',
    );
    expect(need.working.join('\n')).toContain('0.625 gal');
    expect(asked.filter(({ rows }) => rows > 4)).toEqual([]);
  });
});

describe('an error', () => {
  const PASSED_ON = 'A3 shows an error, and this formula uses it. Put that cell right first.';

  test('is told by the sentence of the function that refused, and where its arguments come from', async () => {
    const { sentence, working } = await explained('=1+FEED.SECONDS(A1,D1,2.8,"gal/min")');
    expect(sentence).toContain('dose_unit: "gal/min" was given; use a volume unit');
    expect(working).toEqual([
      'SECONDS: Seconds to hold the wand on one plant.',
      'dose: 0.7, from A1',
      'dose_unit: "gal/min", from D1',
    ]);
  });

  test('that a cell passes on is told by that cell, arithmetic too', async () => {
    await put('Try', 2, 0, { formula: '=1/0' });
    expect((await explained('=FEED.SECONDS(A3,"gal",2.8,"gal/min")')).sentence).toBe(PASSED_ON);
    expect((await explained('=A3*2')).sentence).toBe(PASSED_ON);
  });

  test('is told by what the host knows before anything else', async () => {
    const why = 'Nobody answers.';
    expect((await explained('=FEED.SECONDS(1,"gallon",2.8,"gal/min")', { why })).sentence).toBe(why);
    expect((await explained('=1+1', { why })).sentence).toBeUndefined();
  });

  test('that is caught is no error of the cell', async () => {
    const { sentence } = await explained('=IFERROR(FEED.SECONDS(1,"gallon",2.8,"gal/min"),0)');
    expect(sentence).toBeUndefined();
  });
});

test('the formula is shown as the user types it', async () => {
  const typed = '=FEED.SECONDS(0,7;"gal";2,8;"gal/min")';
  const told = await explained('=FEED.SECONDS(0.7,"gal",2.8,"gal/min")', { typed, shows: '15' });
  expect(told).toMatchObject({ ...at, formula: typed, shows: '15', cells: [] });
  expect(told.working.join('\n')).toContain('0.7 gal ÷ 2.8 gal/min');
});

test('a cell without a formula is not explained', async () => {
  await put('Try', 5, 5, 7);
  expect(await explainCell(workbook, { ...at, shows: '7' })).toBeUndefined();
});
