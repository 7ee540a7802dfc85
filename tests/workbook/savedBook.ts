import { Workbook as FileBook, type Worksheet } from '@cj-tech-master/excelts';

import { contentOf } from '../../addin/files/cellContent';
import { fileAreas } from '../../addin/files/fileAreas';
import type { FileCell } from '../../addin/files/rowPages';
import type { CellInput, CellValue, Edit } from '../../addin/workbook/change';
import { memoryWorkbook, type MemoryWorkbook } from '../../addin/workbook/memoryWorkbook';
import { areaOfReference } from '../../addin/workbook/references';

const shown = ({ value, error }: FileCell): CellValue => error ?? value;

const eachCell = (sheet: Worksheet, tell: (row: number, column: number, cell: FileCell) => void): void =>
  sheet.eachRow((line, row) =>
    line.eachCell((cell, column) => {
      const covered = cell.isMerged && cell.master !== cell;
      const content = covered ? undefined : contentOf(cell);
      if (content !== undefined) tell(row - 1, column - 1, content);
    }),
  );

const cellsOf = (sheet: Worksheet): CellInput[][] => {
  const cells: CellInput[][] = [];
  eachCell(sheet, (row, column, cell) => {
    while (cells.length <= row) cells.push([]);
    cells[row]![column] = cell.formula ? { formula: cell.formula } : shown(cell);
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
      if (cell.formula) computed.set(`${sheet.name}!${row},${column}`, shown(cell));
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
