import type { Change } from '../../workbook/change';
import { WorkbookError, type Snapshot, type Wanted, type Workbook } from '../../workbook/port';
import { areasWanted, refuseMoved } from '../../workbook/seen';
import { refuseNewer, shapeAreas } from '../../workbook/shapes';
import { validateAreas, validateChange } from '../../workbook/validateChange';
import { applyChange } from './grid/applyChange';
import { teachCharts } from './grid/chartFrame';
import { fitRows } from './grid/fitRows';
import { followNames } from './grid/names';
import type { Grid } from './grid/openGrid';
import { teachPages } from './grid/pageSetup';
import { blockOf, outlineOf } from './grid/readBook';

export interface GridWorkbook extends Workbook {
  /** True while the program writes, so that its own writing is not taken for the user's. */
  readonly writing: boolean;
}

/** The workbook port on the grid. A change is one step of the grid's undo; nothing of it is kept out. */
export const gridWorkbook = (grid: Grid): GridWorkbook => {
  teachPages(grid);
  followNames(grid);
  teachCharts(grid);
  let writing = false;
  /** What the grid itself says of a failure is for its makers. */
  const reading = async <Read>(read: () => Read): Promise<Read> => {
    await grid.settled();
    try {
      return read();
    } catch (error) {
      if (error instanceof WorkbookError) throw error;
      throw new WorkbookError('The sheets could not be read. Nothing was changed.', { cause: error });
    }
  };
  return {
    get writing() {
      return writing;
    },
    outline: () => reading(() => outlineOf(grid)),
    read: (wanted: Wanted): Promise<Snapshot> =>
      reading(() => {
        const outline = outlineOf(grid);
        const areas = areasWanted(wanted, outline);
        validateAreas(areas, outline);
        return { ...outline, blocks: areas.map((area) => blockOf(grid, area)) };
      }),
    apply: async (change: Change, seen?: Snapshot): Promise<void> => {
      // Results of a calculation that goes on would be put over what is written into its cells.
      await grid.settled();
      const outline = outlineOf(grid);
      refuseMoved(seen, outline, (area) => blockOf(grid, area));
      refuseNewer(change, { ...outline, blocks: shapeAreas(outline).map((area) => blockOf(grid, area)) });
      validateChange(change, outline);
      if (change.edits.length === 0) return;
      writing = true;
      grid.undo.begin();
      try {
        await applyChange(grid, change.edits);
        grid.undo.end();
        fitRows(grid).catch((reason: unknown) => console.warn('Rows were not fitted.', reason));
      } catch (error) {
        grid.undo.abandon();
        if (error instanceof WorkbookError) throw error;
        throw new WorkbookError(`“${change.title}” could not be written, and the workbook stays as it was.`, {
          cause: error,
        });
      } finally {
        writing = false;
        grid.unlock();
      }
    },
  };
};
