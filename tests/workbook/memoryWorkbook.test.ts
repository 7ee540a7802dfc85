import { memoryWorkbook } from '../../addin/workbook/memoryWorkbook';
import { pressesReadFirst } from '../taskpane/pressesReadFirst';
import type { HostUnderTest } from './portContract/hostUnderTest';
import { portContract } from './portContract/portContract';

const open = async (): Promise<HostUnderTest> => {
  const workbook = memoryWorkbook();
  return {
    workbook,
    undo: async () => void workbook.undo(),
    computes: false,
    inspect: {
      format: async (sheet, row, column) => workbook.look(sheet, row, column).format ?? 'General',
      width: async (sheet, column) =>
        workbook
          .inspect()
          .sheets.find((one) => one.name === sheet)
          ?.widths.get(column) ?? 10,
      look: async (sheet, row, column) => workbook.look(sheet, row, column).style,
      wrapped: async (sheet, row, column) => workbook.look(sheet, row, column).wrapped,
      frozen: async (sheet) => workbook.inspect().sheets.find((one) => one.name === sheet)!.frozen,
      list: async (sheet, row, column) => {
        const list = workbook.look(sheet, row, column).list;
        return list && { source: list.source, message: list.message };
      },
      note: async (sheet, row, column) => workbook.look(sheet, row, column).note,
      charts: async (sheet) =>
        workbook
          .inspect()
          .sheets.find((one) => one.name === sheet)!
          .charts.map(({ id, title, series }) => ({ id, title, series: series.length })),
      page: async (sheet) => {
        const page = workbook.inspect().sheets.find((one) => one.name === sheet)?.page;
        return page && { landscape: page.landscape, repeatRows: page.repeatRows, pagesHigh: page.pagesHigh };
      },
    },
    user: {
      renameSheet: async (from, to) => workbook.user.renameSheet(from, to),
      insertRows: async (sheet, at, count) => workbook.user.insertRows(sheet, at, count),
      insertColumns: async (sheet, at, count) => workbook.user.insertColumns(sheet, at, count),
    },
  };
};

portContract('The memory workbook', open);
pressesReadFirst('the memory workbook', open);
