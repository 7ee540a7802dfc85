import { copyFileSync } from 'node:fs';
import { join } from 'node:path';

import { workbookOf } from '../calc/books';
import { calcGrower } from '../calc/calcGrower';
import { ODS, XLSX } from '../calc/files/book';
import { startOffice } from '../calc/office';
import { LIST, ROSES, type GardenName } from './garden';
import type { Program, Sheets } from './program';

/** LibreOffice Calc with the extension, headless. Each garden is saved as .ods and as .xlsx, and opened from the .ods. */
export const calc = async (folder: string): Promise<Program> => {
  const office = await startOffice();
  const path = (garden: GardenName, ending: string) => join(folder, `${garden}.calc.${ending}`);
  let doc = '';
  const show = async (how: { path?: string }): Promise<void> => {
    if (doc !== '') await office.ask({ do: 'close', doc });
    doc = await office.ask<string>({ do: 'open_document', ...how });
  };
  const open = async (garden: GardenName): Promise<void> => {
    // A file of its own: the office puts a lock beside what it opens.
    const copy = join(office.folder, `${garden}.ods`);
    copyFileSync(path(garden, 'ods'), copy);
    await show({ path: copy });
  };
  const save = async (garden: GardenName): Promise<void> => {
    for (const { ending, filter } of [ODS, XLSX])
      await office.ask({ do: 'store', doc, path: path(garden, ending), filter });
  };
  const sheets = (): Sheets => {
    const ask = (request: string, more: object) => office.ask<void>({ do: request, doc, ...more });
    return {
      workbook: workbookOf(office, doc),
      type: (sheet, row, column, typed) => ask('type_in', { sheet, row, column, typed }),
      insertRows: (sheet, at, count) => ask('insert_rows', { sheet, at, count }),
      insertColumns: (sheet, at, count) => ask('insert_columns', { sheet, at, count }),
      addSheet: (sheet) => ask('add_sheet', { sheet }),
      renameSheet: (sheet, to) => ask('rename_sheet', { sheet, to }),
      moveSheet: (sheet, to) => ask('move_sheet', { sheet, to }),
    };
  };
  return {
    list: async () => {
      await show({});
      await office.ask({ do: 'rename_first', doc, to: LIST });
      const width = Math.max(...ROSES.map((line) => line.length));
      const values = ROSES.map((line) => Array.from({ length: width }, (_, at) => line[at] ?? ''));
      await office.ask({ do: 'put_values', doc, sheet: LIST, cells: `A1:H${values.length}`, values });
      await office.ask({ do: 'merge', doc, sheet: LIST, cells: 'A1:H1' });
      return calcGrower(office, doc);
    },
    emptyWorkbook: async () => {
      await show({});
      return calcGrower(office, doc);
    },
    open: async (garden) => {
      await open(garden);
      return calcGrower(office, doc);
    },
    save,
    rework: async (garden, as, work) => {
      await open(garden);
      await work(sheets());
      await save(as);
    },
    end: () => office.end(),
  };
};
