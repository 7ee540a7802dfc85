import { Workbook as FileBook, type Worksheet } from '@cj-tech-master/excelts';
import { CellValueType, type ICellData } from '@univerjs/core';

import { gridContent } from '../../addin/hosts/workbench/files/cellContent';
import { fileAreas } from '../../addin/hosts/workbench/files/fileAreas';
import type { CellInput, CellValue, Edit } from '../../addin/workbook/change';
import { feedSpelling } from '../../addin/workbook/formula/feedSpelling';
import { memoryWorkbook, type MemoryWorkbook } from '../../addin/workbook/memoryWorkbook';
import { areaOfReference } from '../../addin/workbook/references';

const valueOf = ({ v, t }: ICellData): CellValue =>
  t === CellValueType.BOOLEAN ? v === 1 || v === true : (v ?? null);

const eachCell = (sheet: Worksheet, tell: (row: number, column: number, cell: ICellData) => void): void =>
  sheet.eachRow((line, row) =>
    line.eachCell((cell, column) => {
      const covered = cell.isMerged && cell.master !== cell;
      const content = covered ? undefined : gridContent(cell, feedSpelling);
      if (content !== undefined) tell(row - 1, column - 1, content);
    }),
  );

const cellsOf = (sheet: Worksheet): CellInput[][] => {
  const cells: CellInput[][] = [];
  eachCell(sheet, (row, column, cell) => {
    while (cells.length <= row) cells.push([]);
    cells[row]![column] = cell.f ? { formula: cell.f } : valueOf(cell);
  });
  return cells.map((line) => Array.from(line, (cell) => cell ?? null));
};

const namesOf = (file: FileBook): Edit[] =>
  file.definedNames.model
    .filter(({ name }) => !name.startsWith('_xlnm.'))
    .map(({ name, ranges: [range = ''] }): Edit => {
      // The library doubles an apostrophe in a sheet name that is doubled already.
      const area = areaOfReference(range.replaceAll("''''", "''"));
      if (area === undefined) throw new Error(`The name ${name} is no area but “${range}”.`);
      return { kind: 'name', name, area };
    });

/**
 * A workbook in memory that holds what an .xlsx file holds: cells with the values that the other program computed,
 * merged areas and names. Looks, lists and charts are left out: the port does not read them back.
 */
export const savedBook = async (bytes: Uint8Array): Promise<MemoryWorkbook> => {
  const file = new FileBook();
  await file.xlsx.load(bytes as never);
  const computed = new Map<string, CellValue>();
  for (const sheet of file.worksheets)
    eachCell(sheet, (row, column, cell) => {
      if (cell.f) computed.set(`${sheet.name}!${row},${column}`, valueOf(cell));
    });
  const workbook = memoryWorkbook({
    sheets: Object.fromEntries(file.worksheets.map((sheet) => [sheet.name, cellsOf(sheet)])),
    answer: (_, sheet, row, column) => computed.get(`${sheet}!${row},${column}`) ?? null,
  });
  // What is written from now on is not what the file computed.
  computed.clear();
  const merges = file.worksheets.flatMap((sheet) =>
    (sheet.model.mergeCells ?? []).flatMap((text) =>
      fileAreas(text, sheet.name).map((area): Edit => ({ kind: 'merge', area })),
    ),
  );
  await workbook.apply({ title: 'Open', edits: [...merges, ...namesOf(file)] });
  return workbook;
};
