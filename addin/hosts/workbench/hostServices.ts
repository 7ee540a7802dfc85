import { later } from '../../../taskpane/later';
import { calendarDay, guessMeasures } from '../../../taskpane/locality';
import type { HostEvent, HostServices } from '../../../taskpane/services';
import { watchGrid } from './grid/gridEvents';
import type { Grid } from './grid/openGrid';
import type { GridWorkbook } from './gridWorkbook';
import { printSheet } from './print/printSheet';
import { selectedCell } from './selectedCell';
import { download } from './saveToDisk';

/** The user's hand is followed this long after its last move, so that typing and dragging are told once, ms. */
const PAUSE = 150;

/** What the page offers the pane. */
export const hostServices = (grid: Grid, workbook: GridWorkbook): HostServices => ({
  today: () => calendarDay(new Date()),
  measures: guessMeasures(navigator.languages),
  print: (sheet) => printSheet(grid, sheet),
  download: async (name, mime, text) => download(name, new Blob([text], { type: mime })),
  selected: () => selectedCell(grid),
  undo: () => grid.back(),
  calculating: () => grid.behind,
  watch: (listener) => {
    let at: HostEvent = { kind: 'workbookChanged' };
    const changed = later(() => listener({ kind: 'workbookChanged' }), PAUSE);
    const selected = later(() => listener(at), PAUSE);
    const calculated = later(() => listener({ kind: 'calculated' }), PAUSE);
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
