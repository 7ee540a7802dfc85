import { blockOf, filledBy, formulaOf, worksheets } from '../grid/readBook';
import { openBook, type Grid } from '../grid/openGrid';

/** The open workbook as the bytes of an .xlsx file. What writes it is fetched on demand. */
export const saveFile = async (grid: Grid): Promise<Uint8Array<ArrayBuffer>> => {
  await grid.settled();
  const { writeXlsx } = await import('./writeXlsx');
  const sheets = new Map(worksheets(grid).map((sheet) => [sheet.getSheetId(), sheet]));
  const bytes = await writeXlsx(grid.save(), openBook(grid).getActiveSheet().getSheetName(), {
    of: (sheetId, row, column, cell) => {
      const sheet = sheets.get(sheetId);
      return sheet && formulaOf(grid, sheet, row, column, cell);
    },
    fills: (sheetId, row, column) => {
      const sheet = sheets.get(sheetId);
      const area = sheet && filledBy(grid, sheet, row, column);
      return area && blockOf(grid, area);
    },
  });
  return new Uint8Array(bytes);
};
