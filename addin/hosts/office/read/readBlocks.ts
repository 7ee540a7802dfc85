import type { Area } from '../../../workbook/change';
import type { Block, CellState, Outline } from '../../../workbook/port';
import { inUse } from '../../../workbook/snapshot';
import type { BookAt } from '../bookAt';

import { cellState } from './cellState';
import { loadCells, type Loaded } from './readCells';

const EMPTY: CellState = { value: null };

const statesIn = ({ range: { values, formulas, valueTypes } }: Loaded): CellState[][] =>
  values.map((line: unknown[], row) =>
    line.map((value, column) =>
      cellState({ value, formula: formulas[row]?.[column], type: valueTypes[row]?.[column] ?? 'Unknown' }),
    ),
  );

const widened = (states: readonly CellState[], columns: number): CellState[] => [
  ...states,
  ...Array<CellState>(columns - states.length).fill(EMPTY),
];

/** Reads the areas' cells; what lies past the cells in use is empty and not asked for. */
export const readBlocks = async (at: BookAt, outline: Outline, areas: readonly Area[]): Promise<Block[]> => {
  const wanted = areas.map((area) => inUse(outline, area));
  const used = wanted.filter((area) => area !== undefined);
  const pieces = [...(await loadCells(at, used, 'values,formulas,valueTypes'))];
  return areas.map((area, index) => {
    const cells: CellState[][] = [];
    const rows = wanted[index]?.rows ?? 0;
    while (cells.length < rows) {
      const piece = pieces.shift();
      if (!piece) throw new Error(`The cells of “${area.sheet}” did not all come.`);
      cells.push(...statesIn(piece).map((states) => widened(states, area.columns)));
    }
    while (cells.length < area.rows) cells.push(widened([], area.columns));
    return { area, cells };
  });
};
