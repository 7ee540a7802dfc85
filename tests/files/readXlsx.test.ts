import { Workbook } from '@cj-tech-master/excelts';
import { expect, test } from 'vitest';

import { readAll, valuesOf } from './reading';

const bytesOf = async (file: Workbook): Promise<Uint8Array> => new Uint8Array(await file.xlsx.writeBuffer());

test('values, formulas, errors and looks come page by page, the rest at the end', async () => {
  const file = new Workbook();
  const sheet = file.addWorksheet('Beds', { views: [{ state: 'frozen', ySplit: 1 }] });
  sheet.addRow(['Bed', 'Roses', null, 'Fed on']);
  sheet.getCell('A3').value = 'East';
  sheet.getCell('B3').value = { formula: 'SUM(C3:C9)', result: 24 };
  sheet.getCell('D3').value = new Date(Date.UTC(2026, 4, 3));
  sheet.getCell('A4').value = { formula: '1/0', result: { error: '#DIV/0!' } };
  sheet.getCell('B4').value = { error: '#N/A' };
  sheet.getCell('C4').value = true;
  for (const cell of ['A1', 'B1']) sheet.getCell(cell).font = { bold: true };
  sheet.getCell('F3').font = { italic: true };
  sheet.mergeCells('A6:B7');
  sheet.getCell('B3').note = 'Counted';
  sheet.getColumn(1).width = 24;
  sheet.getRow(3).height = 30;
  file.addWorksheet('Other', { state: 'hidden' }).getCell('B12').value = 'x';
  file.definedNames.add('Beds!$A$1:$B$4', 'Bed_table');

  const read = await readAll('beds.xlsx', await bytesOf(file));
  expect(valuesOf(read)).toEqual([
    ['Bed', 'Roses', null, 'Fed on'],
    [],
    ['East', 24, null, 46_145],
    [null, null, true],
    [],
    [],
    [],
  ]);
  expect(read.pages.flatMap(({ formulas }) => formulas)).toEqual([
    { row: 2, column: 1, formula: '=SUM(C3:C9)' },
    { row: 3, column: 0, formula: '=1/0', error: '#DIV/0!' },
    { row: 3, column: 1, error: '#N/A' },
  ]);
  const [page] = read.pages;
  const lookAt = (row: number, column: number) => page!.newLooks[page!.looks[row]![column]! - 1];
  expect(lookAt(0, 0)?.font?.bold).toBe(true);
  expect(page!.looks[0]![0]).toBe(page!.looks[0]![1]);
  expect(lookAt(2, 5)?.font?.italic).toBe(true);
  expect(valuesOf(read, 1)).toEqual([...Array.from({ length: 11 }, () => []), [null, 'x']]);
  expect(read.book.sheets[0]).toMatchObject({
    name: 'Beds',
    hidden: false,
    frozen: { rows: 1, columns: 0 },
    merges: [{ sheet: 'Beds', row: 5, column: 0, rows: 2, columns: 2 }],
    rowSizes: [{ at: 2, size: 30 }],
    notes: [{ row: 2, column: 1, text: 'Counted' }],
  });
  expect(read.book.sheets[0]!.columnSizes[0]).toEqual({ at: 0, size: 24 });
  expect(read.book.sheets[1]).toMatchObject({ name: 'Other', hidden: true });
  expect(read.book.names).toEqual([{ name: 'Bed_table', refersTo: 'Beds!$A$1:$B$4' }]);
  // It is what a worker sends to its page.
  expect(structuredClone({ pages: read.pages, book: read.book })).toEqual({
    pages: read.pages,
    book: read.book,
  });
});

test('how far it is counts the rows of every sheet while they are taken apart', async () => {
  const file = new Workbook();
  for (const title of ['One', 'Two'])
    file
      .addWorksheet(title)
      .addRows(Array.from({ length: 5_000 }, (_, row) => [`Bed ${row % 40}`, `Rose ${row}`, row % 4]));
  const { progress, pages } = await readAll('long.xlsx', await bytesOf(file));
  expect(new Set(progress.map(([, of]) => of))).toEqual(new Set([5_000, 10_000]));
  expect(progress.at(-1)).toEqual([10_000, 10_000]);
  expect(progress.length).toBeGreaterThan(4);
  progress.forEach(([done, of], at) => {
    expect(done).toBeGreaterThanOrEqual(progress[at - 1]?.[0] ?? 0);
    expect(done).toBeLessThanOrEqual(of);
  });
  expect(pages.map(({ sheet }) => sheet)).toEqual([0, 0, 1, 1]);
});
