import type { MemoryWorkbook } from '../../../addin/workbook/memoryWorkbook';
import type { Outline, Snapshot } from '../../../addin/workbook/port';
import { openHeadlessGrid } from '../../workbook/headlessGrid';
import { shown } from '../../taskpane/calculatingWorkbook';
import type { Area, CellInput } from '../../../addin/workbook/change';

/** A cell and what is typed into it. */
export interface TypedInto {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly input: CellInput;
}

/** A workbook that works its formulas out after everything that is typed into its cells. */
export interface LiveBook {
  outline(): Promise<Outline>;
  read(areas: readonly Area[]): Promise<Snapshot>;
  type(cells: readonly TypedInto[]): Promise<void>;
  close(): Promise<void>;
}

/** One whose rows can be taken out and put in. */
export interface GridBook extends LiveBook {
  rows(how: 'delete' | 'insert', sheet: string, at: number): Promise<void>;
}

/** A memory workbook in the workbench's formula engine, opened once. */
export const gridBook = async (workbook: MemoryWorkbook): Promise<GridBook> => {
  const grid = await openHeadlessGrid(workbook.inspect());
  return {
    outline: () => workbook.outline(),
    read: async (areas) => {
      const snapshot = await workbook.read(areas);
      const blocks = snapshot.blocks.map(({ area, cells }) => {
        const values = grid.values(area);
        return { area, cells: cells.map((row, r) => row.map((cell, c) => shown(cell, values[r]?.[c]))) };
      });
      return { ...snapshot, blocks };
    },
    type: async (cells) => {
      for (const { sheet, row, column, input } of cells) workbook.user.type(sheet, row, column, input);
      await grid.type(cells);
    },
    rows: async (how, sheet, at) => {
      workbook.user[how === 'delete' ? 'deleteRows' : 'insertRows'](sheet, at, 1);
      await grid.rows(how, sheet, at);
    },
    close: async () => grid.close(),
  };
};
