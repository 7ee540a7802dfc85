import type { Office } from './office';

/** A cell as Calc holds it; `error` is the number of Calc's error, 0 without one. */
export interface Cell {
  readonly value: number | string | null;
  readonly error: number;
  readonly shows: string;
  readonly formula: string | null;
}

/** A sheet of an open document, in Calc's own English: semicolons between arguments. */
export interface Sheet {
  readonly doc: string;
  put(cells: string, ...formulas: readonly (readonly string[])[]): Promise<void>;
  /** Numbers and texts; an empty text empties a cell. */
  values(cells: string, rows: readonly (readonly (string | number)[])[]): Promise<void>;
  cells(cells: string): Promise<readonly (readonly Cell[])[]>;
  cell(cell: string): Promise<Cell>;
  /** Puts a formula into A1 and tells what the cell then is. */
  shows(formula: string): Promise<Cell>;
}

export const sheetOf = (office: Office, doc: string, sheet = 'Sheet1'): Sheet => {
  const told = (cells: string) => office.ask<Cell[][]>({ do: 'cells', doc, sheet, cells });
  const put: Sheet['put'] = async (cells, ...formulas) => {
    await office.ask({ do: 'put', doc, sheet, cells, formulas });
  };
  return {
    doc,
    put,
    values: async (cells, values) => {
      await office.ask({ do: 'put_values', doc, sheet, cells, values });
    },
    cells: told,
    cell: async (cell) => (await told(cell))[0]![0]!,
    shows: async (formula) => {
      await put('A1', [formula]);
      return (await told('A1'))[0]![0]!;
    },
  };
};

/** A formula of the catalogue in Calc's own English: bars between the rows of an array. */
export const inCalc = (formula: string): string =>
  formula
    .split(/("(?:[^"]|"")*")/)
    .map((part, index) => (index % 2 ? part : part.replaceAll(';', '|').replaceAll(',', ';')))
    .join('');

/** Numbers of Calc's errors. */
export const VALUE = 519;
export const NOT_AVAILABLE = 32_767;
export const DIVISION = 532;
export const WRONG_ARGUMENT = 502;
