import type { SelectedCell } from '../../../taskpane/services';
import { saveFile } from './files/saveFile';
import type { BookData } from './grid/bookData';
import { registerFeedFunctions } from './grid/feedFunctions';
import { fitRows, keepRowsFitted } from './grid/fitRows';
import { watchGrid, type GridEvents } from './grid/gridEvents';
import { openGrid, openSheet, type Grid } from './grid/openGrid';
import { guardSheetNames } from './grid/sheetNames';
import { gridWorkbook, type GridWorkbook } from './gridWorkbook';
import { nameControls } from './page/nameControls';
import { printSheet } from './print/printSheet';
import { selectedCell } from './selectedCell';

/** The grid in the page, with all that the page does with it. */
export interface Sheets {
  readonly grid: Grid;
  readonly workbook: GridWorkbook;
  /** Puts another workbook in place of the one that is open, with a sheet of it on top. */
  open(book: BookData, active: string): Promise<void>;
  /** The open workbook as the bytes of an .xlsx file. */
  file(): Promise<Uint8Array<ArrayBuffer>>;
  print(sheet: string): Promise<void>;
  selected(): Promise<SelectedCell | undefined>;
  /** Tells what happens in the grid until the returned function is called. */
  watch(events: GridEvents): () => void;
}

/**
 * Builds the grid in an element of the page, with an empty workbook in it.
 *
 * @param options dark: whether it begins dark; refused: hears why a sheet may not have the name that it was given
 */
export const openSheets = (
  container: HTMLElement,
  { dark, refused }: { readonly dark: boolean; readonly refused: (sentence: string) => void },
): Sheets => {
  const grid = openGrid(container, { dark });
  nameControls(container);
  const workbook = gridWorkbook(grid);
  registerFeedFunctions(grid);
  keepRowsFitted(grid);
  guardSheetNames(grid, container, refused);
  return {
    grid,
    workbook,
    open: async (book, active) => {
      await grid.open(book);
      await fitRows(grid);
      openSheet(grid, active);
    },
    file: () => saveFile(grid),
    print: (sheet) => printSheet(grid, sheet),
    selected: () => selectedCell(grid),
    watch: (events) => watchGrid(grid, events),
  };
};
