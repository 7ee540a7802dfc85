import { WorkbookError, type Workbook } from '../../workbook/port';
import { bookWorkbook } from './bookWorkbook';
import type { BookData } from './grid/bookData';
import type { Sheets } from './sheets';

/** The workbook that the page works on: as its file was read until the grid has it, and the grid's from then on. */
export interface PageBook {
  /** The pane's way to it, whichever it is. What writes waits for the grid. */
  readonly workbook: Workbook;
  /** The grid, where it is there and has the workbook. */
  readonly sheets: Sheets | undefined;
  /** The grid as soon as it has the workbook; fails with a plain sentence where it does not come. */
  readonly whenThere: Promise<Sheets>;
  /** Takes another workbook, with a sheet of it on top. */
  show(book: BookData, active: string): Promise<void>;
  /** All that it holds, as the grid keeps it. */
  save(): BookData;
  /** True while formulas show what they showed before, or nothing yet. */
  readonly behind: boolean;
}

/** @param coming the grid, once it is built */
export const openPageBook = (coming: Promise<Sheets>, first: BookData): PageBook => {
  let held = { book: first, workbook: bookWorkbook(first, '') };
  let sheets: Sheets | undefined;
  let active = '';

  /** The workbook may be another one by the time that the grid has taken it. */
  const handOver = async (to: Sheets): Promise<Sheets> => {
    for (let given: BookData | undefined; given !== held.book;) {
      given = held.book;
      await to.open(given, active);
    }
    sheets = to;
    return to;
  };
  const whenThere = coming.then(handOver, (reason: unknown) => {
    throw new WorkbookError(
      'The sheets could not be loaded, so nothing can be written. Load the page again.',
      {
        cause: reason,
      },
    );
  });
  // Whoever waits for it hears of it.
  whenThere.catch(() => undefined);
  return {
    workbook: {
      outline: () => (sheets?.workbook ?? held.workbook).outline(),
      read: (wanted) => (sheets?.workbook ?? held.workbook).read(wanted),
      apply: async (change, seen) => (await whenThere).workbook.apply(change, seen),
    },
    get sheets() {
      return sheets;
    },
    whenThere,
    show: async (book, top) => {
      if (sheets) return sheets.open(book, top);
      held = { book, workbook: bookWorkbook(book, top) };
      active = top;
    },
    save: () => sheets?.grid.save() ?? held.book,
    get behind() {
      return sheets?.grid.behind ?? held.workbook.unworked;
    },
  };
};
