import { later } from '../../../taskpane/later';
import { calendarDay, guessMeasures } from '../../../taskpane/locality';
import type { HostEvent, HostServices } from '../../../taskpane/services';
import type { PageBook } from './pageBook';
import { download } from './saveToDisk';
import type { Sheets } from './sheets';

/** The user's hand is followed this long after its last move, so that typing and dragging are told once, ms. */
const PAUSE = 150;

const watchSheets = (
  { grid, workbook, watch }: Sheets,
  listener: (event: HostEvent) => void,
): (() => void) => {
  let at: HostEvent = { kind: 'workbookChanged' };
  const changed = later(() => listener({ kind: 'workbookChanged' }), PAUSE);
  const selected = later(() => listener(at), PAUSE);
  const calculated = later(() => listener({ kind: 'calculated' }), PAUSE);
  const stopWaiting = grid.caughtUp(calculated);
  const stopWatching = watch({
    changed: (computed) => {
      if (computed) calculated();
      else if (!workbook.writing) changed();
    },
    selected: (sheet, row, column) => {
      at = { kind: 'selected', sheet, row, column };
      if (!workbook.writing) selected();
    },
  });
  return () => {
    stopWaiting();
    stopWatching();
  };
};

/** What the page offers the pane. */
export const hostServices = (book: PageBook): HostServices => ({
  today: () => calendarDay(new Date()),
  measures: guessMeasures(navigator.languages),
  print: async (sheet) => (await book.whenThere).print(sheet),
  download: async (name, mime, text) => download(name, new Blob([text], { type: mime })),
  selected: async () => book.sheets?.selected(),
  undo: async () => (await book.whenThere).grid.back(),
  calculating: () => book.behind,
  watch: (listener) => {
    let stop: (() => void) | undefined;
    let over = false;
    const attach = (sheets: Sheets): void => {
      if (over) return;
      stop = watchSheets(sheets, listener);
      // What the file said of a formula may be old.
      listener({ kind: 'calculated' });
    };
    if (book.sheets) stop = watchSheets(book.sheets, listener);
    else book.whenThere.then(attach, () => undefined);
    return () => {
      over = true;
      stop?.();
    };
  },
});
