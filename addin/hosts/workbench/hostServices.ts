import { calendarDay, guessMeasures } from '../../../taskpane/locality';
import type { HostEvent, HostServices } from '../../../taskpane/services';
import { explainSelected } from './explainCell';
import type { FeedFunctions } from './grid/feedFunctions';
import { watchGrid } from './grid/gridEvents';
import type { Grid } from './grid/openGrid';
import type { GridWorkbook } from './gridWorkbook';
import { printSheet } from './print/printSheet';
import { download } from './saveToDisk';

/** The user's hand is followed this long after its last move, so that typing and dragging are told once, ms. */
const PAUSE = 150;

const later = (tell: () => void): (() => void) => {
  let timer: ReturnType<typeof setTimeout> | undefined;
  return () => {
    clearTimeout(timer);
    timer = setTimeout(tell, PAUSE);
  };
};

/** What the page offers the pane. */
export const hostServices = (grid: Grid, workbook: GridWorkbook, functions: FeedFunctions): HostServices => ({
  today: () => calendarDay(new Date()),
  measures: guessMeasures(navigator.languages),
  print: (sheet) => printSheet(grid, sheet),
  download: async (name, mime, text) => download(name, new Blob([text], { type: mime })),
  explain: () => explainSelected(grid, workbook, functions),
  undo: () => grid.back(),
  calculating: () => grid.behind,
  watch: (listener) => {
    let at: HostEvent = { kind: 'workbookChanged' };
    const changed = later(() => listener({ kind: 'workbookChanged' }));
    const selected = later(() => listener(at));
    const calculated = later(() => listener({ kind: 'calculated' }));
    const stopWaiting = grid.caughtUp(calculated);
    const stopWatching = watchGrid(grid, {
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
  },
});
