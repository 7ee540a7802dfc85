import type { Area } from '../../../workbook/change';
import type { BookAt } from '../bookAt';
import { isFormula } from '../read/cellState';
import { loadCells, type Loaded } from '../read/readCells';
import { cellText } from '../write/cellText';
import type { FormatAt } from '../write/cells';
import type { Step } from '../write/step';

/** Cells as they were. */
export interface KeptCells {
  readonly formatAt: FormatAt;
  readonly steps: readonly Step[];
}

const asGiven = ({ values, formulas }: Excel.Range): unknown[][] =>
  formulas.map((line: unknown[], row) =>
    line.map((formula, column) => {
      const value: unknown = values[row]?.[column];
      if (isFormula(formula, value) || typeof formula !== 'string') return formula;
      return formula === '' ? '' : cellText(formula);
    }),
  );

const putBack = ({ area, range }: Loaded): Step => {
  const formulas = asGiven(range);
  const formats = range.numberFormat.map((line: unknown[]) => [...line]);
  // A cell that is kept as text would take a number or a formula for the text of it.
  const free = formats.map((line) => line.map(() => 'General'));
  return {
    bytes: JSON.stringify([formulas, formats, free]).length,
    queue: (at: BookAt) => {
      const now = at.range(area);
      now.numberFormat = free;
      now.formulas = formulas;
      now.numberFormat = formats;
    },
  };
};

/** Reads values, formulas and number formats of the areas, to put them back where the rest cannot be written. */
export const keepCells = async (at: BookAt, areas: readonly Area[]): Promise<KeptCells> => {
  const loaded = await loadCells(at, areas, 'values,formulas,numberFormat');
  return {
    steps: loaded.map(putBack),
    formatAt: (sheet, row, column) => {
      const piece = loaded.find(
        ({ area }) =>
          area.sheet === sheet &&
          row >= area.row &&
          row < area.row + area.rows &&
          column >= area.column &&
          column < area.column + area.columns,
      );
      const format: unknown = piece?.range.numberFormat[row - piece.area.row]?.[column - piece.area.column];
      return typeof format === 'string' ? format : undefined;
    },
  };
};
