import { Workbook as FileBook } from '@cj-tech-master/excelts';
import { installChartSupport } from '@cj-tech-master/excelts/chart';
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';

import type { Area, Edit } from '../../../addin/workbook/change';
import type { Outline, Snapshot } from '../../../addin/workbook/port';
import { openTestPage, type TestPage } from './openTestPage';

let bench: TestPage;
beforeAll(async () => {
  installChartSupport();
  bench = await openTestPage();
});
afterAll(() => bench?.close());
beforeEach(() => bench.call('open'));

const area = (sheet: string, row: number, column: number, rows = 1, columns = 1): Area => ({
  sheet,
  row,
  column,
  rows,
  columns,
});

const GARDEN: readonly Edit[] = [
  { kind: 'addSheet', sheet: 'Beds' },
  { kind: 'addSheet', sheet: "Gran's card" },
  {
    kind: 'write',
    sheet: 'Beds',
    row: 0,
    column: 0,
    cells: [
      ['Beds', null, null],
      ['Bed', 'Roses', 'Fed on'],
      ['East', 24, 46_145],
      ['007', '=1+1', true],
      ['<b>West</b>', 3.5, '  spaced  '],
    ],
  },
  {
    kind: 'write',
    sheet: "Gran's card",
    row: 0,
    column: 0,
    cells: [
      [{ formula: '=FEED.SECONDS(0.7,"gal",2.8,"gal/min")' }, { formula: '=SUM(Beds!B3:B5)' }],
      [{ formula: '=FEED.SECONDS("much","gal",2.8,"gal/min")' }, { formula: '=IFERROR(1/0,"none")' }],
      [{ formula: '=FEED.MEASURE(60,"tbsp")' }, { formula: '=Pump_flow*2' }],
    ],
  },
  { kind: 'format', area: area('Beds', 2, 2), format: 'yyyy-mm-dd' },
  { kind: 'format', area: area('Beds', 4, 1), format: '0.00" L"' },
  { kind: 'style', area: area('Beds', 0, 0), style: 'title' },
  { kind: 'style', area: area('Beds', 1, 0, 1, 3), style: 'header' },
  { kind: 'style', area: area('Beds', 2, 0, 3, 1), style: 'input' },
  { kind: 'style', area: area('Beds', 2, 1, 3, 1), style: 'computed' },
  { kind: 'style', area: area("Gran's card", 0, 0), style: 'big' },
  { kind: 'wrap', area: area('Beds', 1, 1) },
  { kind: 'merge', area: area('Beds', 0, 0, 1, 3) },
  { kind: 'width', sheet: 'Beds', column: 0, columns: 1, characters: 24 },
  { kind: 'freeze', sheet: 'Beds', rows: 2, columns: 1 },
  {
    kind: 'list',
    area: area('Beds', 2, 0, 20, 1),
    source: ['East', 'the "far" west'],
    message: 'Give a bed.',
  },
  {
    kind: 'list',
    area: area("Gran's card", 5, 0, 4, 1),
    source: area('Beds', 2, 0, 3, 1),
    message: 'From Beds.',
  },
  { kind: 'name', name: 'Pump_flow', area: area('Beds', 2, 1) },
  { kind: 'name', name: 'Bed_table', area: area('Beds', 1, 0, 4, 3) },
  { kind: 'name', name: 'Card_head', area: area("Gran's card", 0, 0, 1, 2) },
  { kind: 'note', sheet: 'Beds', row: 2, column: 1, text: 'Counted in May.\nTwice.' },
  { kind: 'page', area: area("Gran's card", 0, 0, 12, 4), landscape: true, repeatRows: 1, pagesHigh: 1 },
  {
    kind: 'chart',
    id: 'roses',
    sheet: 'Beds',
    row: 8,
    column: 0,
    type: 'bar',
    title: 'Roses by bed',
    finding: 'The east bed has most.',
    labels: area('Beds', 2, 0, 3, 1),
    series: [{ name: 'Roses', values: area('Beds', 2, 1, 3, 1) }],
  },
];

const everything = async () => {
  const outline: Outline = await bench.call('outline');
  const used = outline.sheets
    .filter((sheet) => sheet.rows > 0)
    .map((sheet) => area(sheet.name, 0, 0, sheet.rows, sheet.columns));
  const { blocks }: Snapshot = await bench.call('read', used);
  return { sheets: outline.sheets, names: outline.names, blocks };
};

const looks = async () => ({
  look: await Promise.all([0, 1, 2, 3].map((row) => bench.call('look', 'Beds', row, row === 3 ? 1 : 0))),
  big: await bench.call('look', "Gran's card", 0, 0),
  formats: [await bench.call('format', 'Beds', 2, 2), await bench.call('format', 'Beds', 4, 1)],
  shows: [await bench.call('shows', 'Beds', 2, 2), await bench.call('shows', 'Beds', 4, 1)],
  wrapped: [await bench.call('wrapped', 'Beds', 1, 1), await bench.call('wrapped', 'Beds', 1, 0)],
  frozen: [await bench.call('frozen', 'Beds'), await bench.call('frozen', "Gran's card")],
  lists: [
    await bench.call('list', 'Beds', 21, 0),
    await bench.call('list', 'Beds', 22, 0),
    await bench.call('list', "Gran's card", 8, 0),
  ],
  notes: [await bench.call('note', 'Beds', 2, 1), await bench.call('note', 'Beds', 3, 1)],
  page: await bench.call('page', "Gran's card"),
});

const built = async (): Promise<string> => {
  await bench.call('apply', { title: 'Build', edits: GARDEN });
  await bench.call('outline');
  return bench.call('saveFile');
};

test('rows of several lines are as high in the file as on the screen, for programs that do not fit them', async () => {
  await bench.call('open');
  await bench.call('apply', {
    title: 'Card',
    edits: [
      {
        kind: 'write',
        sheet: 'Sheet1',
        row: 0,
        column: 0,
        cells: [['one line'], ['many words on many lines']],
      },
      { kind: 'style', area: area('Sheet1', 1, 0), style: 'big' },
      { kind: 'wrap', area: area('Sheet1', 1, 0) },
    ],
  });
  const row = async () => {
    const file = new FileBook();
    await file.xlsx.load(Buffer.from(await bench.call('saveFile'), 'base64') as never);
    return file.getWorksheet('Sheet1')!.getRow(2);
  };
  await expect.poll(async () => (await row()).height).toBeGreaterThan(60);
  expect((await row()).customHeight ?? false).toBe(false);
});

test('a garden that is saved and opened again is the same garden', async () => {
  const file = await built();
  const before = { ...(await everything()), ...(await looks()) };
  const width: number = await bench.call('width', 'Beds', 0);
  await bench.call('open');
  expect(await bench.call('openFile', 'garden.xlsx', file)).toEqual([]);
  expect({ ...(await everything()), ...(await looks()) }).toEqual(before);
  expect(Math.abs((await bench.call('width', 'Beds', 0)) - width)).toBeLessThan(0.5);
  expect(before.blocks.flatMap(({ cells }) => cells.flat())).toContainEqual({
    value: null,
    error: '#VALUE!',
    formula: '=FEED.SECONDS("much","gal",2.8,"gal/min")',
  });
});

test('charts are saved as charts and come back', async () => {
  const file = await built();
  await bench.call('open');
  await bench.call('openFile', 'garden.xlsx', file);
  expect(await bench.call('charts', 'Beds')).toMatchObject([{ title: 'Roses by bed', series: 1 }]);
  expect(await bench.call('chartNumbers', 'Beds')).toEqual([[[24, Number.NaN, 3.5]]]);
  const chart = GARDEN.find(({ kind }) => kind === 'chart')!;
  await bench.call('apply', { title: 'Draw again', edits: [chart] });
  expect(await bench.call('charts', 'Beds')).toEqual([{ id: 'roses', title: 'Roses by bed', series: 1 }]);
});

test('cells that are empty keep their looks', async () => {
  await bench.call('apply', {
    title: 'Mark',
    edits: [
      { kind: 'style', area: area('Sheet1', 4, 3), style: 'input' },
      { kind: 'write', sheet: 'Sheet1', row: 0, column: 0, cells: [['x']] },
    ],
  });
  const look: string = await bench.call('look', 'Sheet1', 4, 3);
  expect(look).toContain('bd');
  await bench.call('openFile', 'garden.xlsx', await bench.call('saveFile'));
  expect(await bench.call('look', 'Sheet1', 4, 3)).toBe(look);
});

test('what the grid does not keep of a file is told', async () => {
  const file = new FileBook();
  const sheet = file.addWorksheet('List');
  sheet.getCell('A1').value = 1;
  const dot =
    'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==';
  sheet.addImage(file.addImage({ base64: dot, extension: 'png' }), 'B2:C3');
  sheet.addConditionalFormatting({
    ref: 'A1:A9',
    rules: [{ type: 'expression', priority: 1, formulae: ['A1>1'], style: { font: { bold: true } } }],
  });
  const bytes = Buffer.from(await file.xlsx.writeBuffer()).toString('base64');
  expect(await bench.call('openFile', 'list.xlsx', bytes)).toEqual(['1 picture', 'colours by rule']);
});

test('a second saving keeps what the first kept', async () => {
  const file = await built();
  const before = { ...(await everything()), ...(await looks()) };
  await bench.call('openFile', 'garden.xlsx', file);
  const again: string = await bench.call('saveFile');
  await bench.call('openFile', 'again.xlsx', again);
  expect({ ...(await everything()), ...(await looks()) }).toEqual(before);
});

test('the file holds FEED formulas by their names, with their results', async () => {
  const file = new FileBook();
  await file.xlsx.load(Buffer.from(await built(), 'base64') as never);
  const card = file.getWorksheet("Gran's card")!;
  expect(card.getCell('A1').formula).toBe('FEED.SECONDS(0.7,"gal",2.8,"gal/min")');
  expect(card.getCell('A1').result).toBeCloseTo(15, 9);
  expect(card.getCell('A2').result).toEqual({ error: '#VALUE!' });
  expect(card.getCell('A3').result).toBe('3 3/4 cups');
  expect(file.getWorksheet('Beds')!.getCell('A4').value).toBe('007');
  expect(file.getWorksheet('Beds')!.getCell('B4').value).toBe('=1+1');
});

test('both spellings that other programs store are read as FEED functions', async () => {
  const file = new FileBook();
  const sheet = file.addWorksheet('Calc');
  sheet.getCell('A1').value = {
    formula: 'feed.seconds(0.7,"gal",2.8,"gal/min")',
    result: { error: '#NAME?' },
  };
  sheet.getCell('A2').value = { formula: '_xldudf_FEED_SECONDS(0.7,"gal",2.8,"gal/min")' };
  sheet.getCell('A3').value = { formula: 'IF(TRUE,"feed.seconds(",1)' };
  await bench.call('openFile', 'calc.xlsx', Buffer.from(await file.xlsx.writeBuffer()).toString('base64'));
  const { blocks }: Snapshot = await bench.call('read', [area('Calc', 0, 0, 3, 1)]);
  const formula = '=FEED.SECONDS(0.7,"gal",2.8,"gal/min")';
  expect(blocks[0]!.cells.flat()).toMatchObject([
    { formula, value: expect.closeTo(15, 9) },
    { formula, value: expect.closeTo(15, 9) },
    { value: 'feed.seconds(' },
  ]);
});

test('the page said nothing of errors and asked for nothing elsewhere', () => {
  expect(bench.troubles).toEqual([]);
});

test('a sheet with an exclamation mark in its name gets one that formulas find; formulas, names and lists follow', async () => {
  const file = new FileBook();
  const marked = file.addWorksheet("Gran's!");
  marked.getCell('A1').value = 3;
  marked.getCell('B1').value = { formula: 'A1*2', result: 6 };
  file.addWorksheet("Gran's").getCell('A1').value = 5;
  file.addWorksheet('!').getCell('A1').value = 7;
  const other = file.addWorksheet('Other');
  other.getRow(1).values = [
    { formula: "'Gran''s!'!A1*2", result: 6 },
    { formula: "SUM('Gran''s!'!A1:B1)+'Gran''s'!A1+'!'!A1", result: 21 },
    { formula: 'Total*2', result: 6 },
    "'Gran''s!'!A1",
  ];
  other.getCell('A2').dataValidation = { type: 'list', formulae: ["'Gran''s!'!$A$1:$A$2"] };
  file.definedNames.model = [
    { name: 'Total', ranges: [], kind: 'formula', formulaExpression: "'Gran''s!'!$A$1" },
  ] as never;
  const bytes = Buffer.from(await file.xlsx.writeBuffer()).toString('base64');
  await bench.call('openFile', 'marks.xlsx', bytes);
  const outline: Outline = await bench.call('outline');
  expect(outline.sheets.map(({ name }) => name)).toEqual(["Gran's 2", "Gran's", 'Sheet', 'Other']);
  expect(outline.names['Total']).toEqual(area("Gran's 2", 0, 0));
  const { blocks }: Snapshot = await bench.call('read', [area("Gran's 2", 0, 1), area('Other', 0, 0, 1, 4)]);
  expect(blocks[0]!.cells[0]![0]!.value).toBe(6);
  expect(blocks[1]!.cells[0]).toEqual([
    { value: 6, formula: "='Gran''s 2'!A1*2" },
    { value: 21, formula: "=SUM('Gran''s 2'!A1:B1)+'Gran''s'!A1+'Sheet'!A1" },
    { value: 6, formula: '=Total*2' },
    { value: "'Gran''s!'!A1" },
  ]);
  expect(await bench.call('list', 'Other', 1, 0)).toEqual({
    source: area("Gran's 2", 0, 0, 2, 1),
    message: '',
  });
});
