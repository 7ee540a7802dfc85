import { describe, expect, test } from 'vitest';
import type { CellInput } from '../../addin/workbook/change';
import { memoryWorkbook, type MemoryWorkbook } from '../../addin/workbook/memoryWorkbook';
import { bedsTable } from '../../addin/workbook/sheets/beds';
import { dosesTable } from '../../addin/workbook/sheets/doses';
import { plantsTable } from '../../addin/workbook/sheets/plants';
import { productsTable } from '../../addin/workbook/sheets/products';
import { usedArea } from '../../addin/workbook/snapshot';
import { readTable } from '../../addin/workbook/tables/readTable';
import type { Columns, Table } from '../../addin/workbook/tables/table';

const HEADERS = ['Plant', 'Bed', 'Size class', 'How many', 'Class', 'Pot or ground', 'Dose', 'Notes'];

const listOf = async (...rows: CellInput[][]): Promise<MemoryWorkbook> => {
  const workbook = memoryWorkbook({ sheets: { Plants: [['Plants'], [], HEADERS, ...rows] } });
  const area = { sheet: 'Plants', row: 2, column: 0, rows: 1, columns: HEADERS.length };
  await workbook.apply({ title: 'Name it', edits: [{ kind: 'name', name: plantsTable.name, area }] });
  return workbook;
};

const read = async <C extends Columns>(workbook: MemoryWorkbook, table: Table<C>) => {
  const outline = await workbook.outline();
  const areas = outline.sheets.flatMap(({ name }) => usedArea(outline, name) ?? []);
  return readTable(table, await workbook.read(areas));
};

const ADA = ['Ada', 'East', 'Large bush', 3, 'Hybrid tea', 'ground', null, 'old'];

describe('a table is found by its workbook name', () => {
  test('and read into rows', async () => {
    const { rows, problems } = await read(await listOf(ADA), plantsTable);
    expect(problems).toEqual([]);
    expect(rows).toEqual([
      {
        row: 3,
        plant: 'Ada',
        bed: 'East',
        sizeClass: 'Large bush',
        howMany: 3,
        roseClass: 'Hybrid tea',
        place: 'ground',
        notes: 'old',
      },
    ]);
  });

  test('wherever the user put it, and whatever the sheet is called now', async () => {
    const workbook = await listOf(ADA);
    workbook.user.renameSheet('Plants', "Gran's roses");
    workbook.user.insertRows("Gran's roses", 1, 4);
    workbook.user.insertColumns("Gran's roses", 0, 2);
    workbook.user.insertColumns("Gran's roses", 4, 1);
    workbook.user.type("Gran's roses", 6, 4, 'Bought');
    workbook.user.type("Gran's roses", 7, 4, 2014);
    const { rows, site } = await read(workbook, plantsTable);
    expect(rows).toMatchObject([{ row: 7, plant: 'Ada', howMany: 3, notes: 'old' }]);
    expect(site).toMatchObject({ sheet: "Gran's roses", header: 6, first: 2, last: 10 });
  });

  test('with its columns in any order and headers in any spelling', async () => {
    const workbook = await listOf(['East', 'Ada', ...ADA.slice(2)]);
    workbook.user.type('Plants', 2, 0, '  BED ');
    workbook.user.type('Plants', 2, 1, 'plant');
    expect((await read(workbook, plantsTable)).rows).toMatchObject([{ plant: 'Ada', bed: 'East' }]);
  });

  test('not by the title of a sheet', async () => {
    const workbook = memoryWorkbook({ sheets: { Plants: [HEADERS, ADA] } });
    expect(await read(workbook, plantsTable)).toEqual({ rows: [], heads: {}, problems: [] });
  });

  test('blank rows between and rows with only a formula of ours are no rows', async () => {
    const workbook = await listOf(ADA, [], [null, null, null, null, null, null, { formula: '=""' }], ADA);
    expect((await read(workbook, plantsTable)).rows.map(({ row }) => row)).toEqual([3, 6]);
  });

  test('a name that is a number is its text', async () => {
    const { rows } = await read(await listOf([1867, 3, 'Bush', 1]), plantsTable);
    expect(rows).toMatchObject([{ plant: '1867', bed: '3', sizeClass: 'Bush' }]);
  });
});

describe('a row that cannot be read is told with place, what was given and what is allowed', () => {
  test.each([
    [
      ['Ada', 'East', 'Bush', 'lots'],
      'Plants, row 4, How many: “lots” was given; use a whole number from 0 to 100,000.',
    ],
    [
      ['Ada', 'East', 'Bush', '3'],
      'Plants, row 4, How many: “3” was given; use a whole number from 0 to 100,000.',
    ],
    [
      ['Ada', 'East', 'Bush', -1],
      'Plants, row 4, How many: “-1” was given; use a whole number from 0 to 100,000.',
    ],
    [
      ['Ada', 'East', 'Bush', 1.5],
      'Plants, row 4, How many: “1.5” was given; use a whole number from 0 to 100,000.',
    ],
    [
      ['Ada', 'East', 'Bush'],
      'Plants, row 4, How many: nothing was given; use a whole number from 0 to 100,000.',
    ],
    [['Ada', null, 'Bush', 1], 'Plants, row 4, Bed: nothing was given; use the name of a bed.'],
    [
      ['Ada', 'East', ' ', 1],
      'Plants, row 4, Size class: nothing was given; use a size class of the Doses sheet.',
    ],
    [
      ['Ada', 'East', 'Bush', 1, '', 'tub'],
      'Plants, row 4, Pot or ground: “tub” was given; use ground or pot.',
    ],
    [
      ['Ada', 'East', 'Bush', 1, '', `${'x'.repeat(50)}`],
      `Plants, row 4, Pot or ground: “${'x'.repeat(40)}…” was given; use ground or pot.`,
    ],
  ])('%j', async (row, sentence) => {
    const { rows, problems } = await read(await listOf(row, ADA), plantsTable);
    expect(problems.map((problem) => problem.sentence)).toEqual([sentence]);
    expect(problems[0]).toMatchObject({ place: 'garden', sheet: 'Plants', row: 3 });
    expect(rows.map(({ row: at }) => at)).toEqual([4]);
  });

  test('an error value in a cell is told as it shows', async () => {
    const workbook = await listOf(ADA, ADA);
    const outline = await workbook.outline();
    const snapshot = await workbook.read([usedArea(outline, 'Plants')!]);
    const cells = snapshot.blocks[0]!.cells.map((row) => [...row]);
    cells[3]![3] = { value: null, formula: '=1/0', error: '#DIV/0!' };
    cells[4]![7] = { value: null, error: '#N/A' };
    const { rows, problems } = readTable(plantsTable, {
      ...snapshot,
      blocks: [{ ...snapshot.blocks[0]!, cells }],
    });
    expect(rows).toEqual([]);
    expect(problems.map(({ sentence }) => sentence)).toEqual([
      'Plants, row 4, How many: the cell shows #DIV/0!; use a whole number from 0 to 100,000.',
      'Plants, row 5, Notes: the cell shows #N/A; use a value.',
    ]);
  });

  test('a column that must be there and was deleted is told once', async () => {
    const workbook = await listOf(ADA, ADA);
    workbook.user.deleteColumns('Plants', 2, 1);
    const { rows, problems } = await read(workbook, plantsTable);
    expect(rows).toEqual([]);
    expect(problems.map(({ sentence }) => sentence)).toEqual([
      'Plants has no column “Size class” beside the others in row 3; put the header back.',
    ]);
  });

  test('a column that may be blank may be gone', async () => {
    const workbook = await listOf(ADA);
    workbook.user.deleteColumns('Plants', 7, 1);
    expect(await read(workbook, plantsTable)).toMatchObject({ rows: [{ notes: '' }], problems: [] });
  });
});

test.each([
  ['dose', 0, 'a number above 0', dosesTable],
  ['dose', 'much', 'a number above 0', dosesTable],
  ['walk', 'first', 'a number', bedsTable],
  ['form', 'gas', 'powder, liquid or dry', productsTable],
  ['N', 101, 'a number from 0 to 100', productsTable],
  ['density', 0, 'a number from 0.01 to 30', productsTable],
  [
    'greatestRateUnit',
    'a spoonful',
    'a rate as labels print it, such as tbsp/gal, mL/L or oz/100 gal',
    productsTable,
  ],
  ['packUnit', 'gal/min', 'a unit of volume or mass: ', productsTable],
])('the column %s refuses %j; it allows %s', (key, value, allowed, table) => {
  const column = table.columns[key]!;
  const parsed = column.holds?.schema.safeParse(value);
  expect(parsed?.error?.issues[0]?.message).toContain(allowed);
});
