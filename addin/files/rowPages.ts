import type { Style } from '@cj-tech-master/excelts';

import type { CellValue } from '../workbook/change';
import { FileRefused } from './fileRefused';
import type { FileFormula, FileListener } from './fileBook';

/** A spreadsheet grows slow with about this many cells. */
const MOST_CELLS = 2_000_000;
/** A page is told once it has this many cells: few enough that who takes them breathes in between. */
const CELLS_A_PAGE = 10_000;

/** What a cell holds. */
export interface FileCell extends Pick<FileFormula, 'formula' | 'error'> {
  readonly value: CellValue;
}

export interface RowPages {
  /** Begins the next row of a sheet; rows between it and the row before are empty. */
  row(sheet: number, row: number): void;
  /** The next cell of the row that was begun, with its number from `look`. */
  cell(column: number, cell: FileCell | undefined, look: number): void;
  look(style: Partial<Style>): number;
  /** Tells what was not told yet. */
  end(): void;
}

const started = () => ({
  values: [] as CellValue[][],
  looks: [] as number[][],
  formulas: [] as FileFormula[],
});

/**
 * Puts cells together into pages, and tells each once it is full.
 *
 * @param name the file's, for the sentence
 */
export const rowPages = (name: string, { rows }: Pick<FileListener, 'rows'>): RowPages => {
  let [sheet, first, count, all] = [0, 0, 0, 0];
  let page = started();
  let newLooks: Partial<Style>[] = [];
  const numbers = new Map<string, number>();
  // Cells of one look mostly share it, and are then not compared.
  const known = new Map<Partial<Style>, number>();

  const end = (): void => {
    if (page.values.length > 0) rows({ sheet, row: first, ...page, newLooks });
    [page, newLooks, count] = [started(), [], 0];
  };
  return {
    end,
    row: (ofSheet, row) => {
      const next = first + page.values.length;
      if (count >= CELLS_A_PAGE || ofSheet !== sheet || row < next || row > next + CELLS_A_PAGE) end();
      if (page.values.length === 0) [sheet, first] = [ofSheet, row];
      while (first + page.values.length <= row) {
        page.values.push([]);
        page.looks.push([]);
      }
    },
    cell: (column, cell, look) => {
      [count, all] = [count + 1, all + 1];
      if (all > MOST_CELLS)
        throw new FileRefused(
          `“${name}” has more than ${MOST_CELLS.toLocaleString('en')} cells, which is more than this page holds.`,
        );
      const [values, looks] = [page.values.at(-1)!, page.looks.at(-1)!];
      const { value, formula, error } = cell ?? { value: null };
      if (value !== null) {
        while (values.length < column) values.push(null);
        values[column] = value;
      }
      if (look !== 0) {
        while (looks.length < column) looks.push(0);
        looks[column] = look;
      }
      if (formula === undefined && error === undefined) return;
      page.formulas.push({
        row: first + page.values.length - 1,
        column,
        ...(formula === undefined ? {} : { formula }),
        ...(error === undefined ? {} : { error }),
      });
    },
    look: (style) => {
      const before = known.get(style);
      if (before !== undefined) return before;
      const text = JSON.stringify(style);
      const number = text === '{}' ? 0 : (numbers.get(text) ?? numbers.size + 1);
      if (number > numbers.size) {
        numbers.set(text, number);
        newLooks.push(style);
      }
      known.set(style, number);
      return number;
    },
  };
};
