import type { CellState, Snapshot, Workbook } from '../../addin/workbook/port';
import type { MemoryWorkbook } from '../../addin/workbook/memoryWorkbook';

import { openHeadlessGrid } from '../workbook/headlessGrid';

/** A cell with what its formula comes to. */
export const shown = (cell: CellState, computed: unknown): CellState => {
  if (cell.formula === undefined) return cell;
  if (typeof computed === 'string' && /^#[A-Z/0!?]+$/.test(computed))
    return { ...cell, value: null, error: computed };
  return { ...cell, value: typeof computed === 'number' || typeof computed === 'string' ? computed : null };
};

/** A memory workbook whose formulas have values: those of the workbench's own formula engine. */
export const calculatingWorkbook = (workbook: MemoryWorkbook): Workbook => ({
  outline: () => workbook.outline(),
  apply: (change, seen) => workbook.apply(change, seen),
  read: async (wanted) => {
    const snapshot = await workbook.read(wanted);
    if (
      !snapshot.blocks.some(({ cells }) =>
        cells.some((row) => row.some(({ formula }) => formula !== undefined)),
      )
    )
      return snapshot;
    const grid = await openHeadlessGrid(workbook.inspect());
    const blocks = snapshot.blocks.map(({ area, cells }): Snapshot['blocks'][number] => ({
      area,
      cells: cells.map((row, r) =>
        row.map((cell, c) =>
          shown(
            cell,
            cell.formula === undefined ? null : grid.value(area.sheet, area.row + r, area.column + c),
          ),
        ),
      ),
    }));
    grid.close();
    return { ...snapshot, blocks };
  },
});
