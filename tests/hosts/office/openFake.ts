import { thisProgram, type ExcelProgram } from '../../../addin/hosts/office/excelProgram';
import { charactersOf } from '../../../addin/hosts/office/edits/widths';
import { officeWorkbook, type OfficeWorkbook } from '../../../addin/hosts/office/officeWorkbook';
import { areaOfReference } from '../../../addin/workbook/references';
import type { HostInspection } from '../../workbook/portContract/hostUnderTest';

import { apiMembers } from './fake/apiMembers';
import { fakeExcel, type FakeExcel, type FakeOptions } from './fake/fakeExcel';
import { memoryHostBook, type MemoryHostBook } from './fake/memoryHostBook';

export interface OpenFake {
  readonly book: MemoryHostBook;
  readonly fake: FakeExcel;
  readonly program: ExcelProgram;
  readonly workbook: OfficeWorkbook;
  readonly inspect: HostInspection;
}

const members = apiMembers();

/** What lies on a workbook and the port does not read back. */
const inspection = (book: MemoryHostBook): HostInspection => {
  const at = (name: string) => book.sheetNamed(name);
  const place = (row: number, column: number) => `${row},${column}`;
  return {
    format: async (sheet, row, column) => at(sheet).formats.get(place(row, column)) ?? 'General',
    width: async (sheet, column) => charactersOf(at(sheet).widths.get(column) ?? 48),
    look: async (sheet, row, column) => JSON.stringify(Object.entries(at(sheet).looks.get(place(row, column)) ?? {}).sort()), // prettier-ignore
    wrapped: async (sheet, row, column) =>
      at(sheet).looks.get(place(row, column))?.['format.wrapText'] === true,
    frozen: async (sheet) => at(sheet).frozen,
    list: async (sheet, row, column) => {
      const rule = at(sheet).rules.get(place(row, column));
      const source = rule?.rule.list?.source;
      if (source === undefined) return undefined;
      const { message } = rule!.errorAlert as { message: string };
      return { source: source.startsWith('=') ? areaOfReference(source)! : source.split(','), message };
    },
    note: async (sheet, row, column) =>
      [...at(sheet).note, ...at(sheet).comment].find((note) => note.row === row && note.column === column)
        ?.text,
    charts: async (sheet) =>
      at(sheet).charts.map(({ name, title, series }) => ({
        id: name.replace(/^Wandcount /, ''),
        title,
        series: series.length,
      })),
    page: async (sheet) => {
      const { orientation, titleRows, area, zoom } = at(sheet).page;
      if (area === undefined) return undefined;
      const { verticalFitToPages: pagesHigh } = zoom as Excel.PageLayoutZoomOptions;
      return { landscape: orientation === 'Landscape', repeatRows: titleRows?.rows ?? 0, pagesHigh };
    },
  };
};

/** The adapter on the strict fake, through the page's own way to the program. */
export const openFake = (options: Omit<FakeOptions, 'members'> = {}): OpenFake => {
  const book = memoryHostBook();
  const fake = fakeExcel(book, { members, ...options });
  const isSetSupported = (name: string, version: string) => name === 'ExcelApi' && fake.supports(version);
  // Two may be open at once, and a page has one program.
  const install = (): void =>
    void Object.assign(globalThis, {
      Excel: { run: fake.run },
      Office: { context: { requirements: { isSetSupported } } },
    });
  const program: ExcelProgram = {
    supports: (version) => {
      install();
      return thisProgram.supports(version);
    },
    run: (batch, how) => {
      install();
      return thisProgram.run(batch, how);
    },
  };
  return { book, fake, program, workbook: officeWorkbook(program), inspect: inspection(book) };
};
