import type { DataValidationWithFormulae, Style } from '@cj-tech-master/excelts';

import type { Area, CellValue } from '../workbook/change';

/* A spreadsheet file as it was read: plain data, which passes from a worker to a page. Rows and columns count from 0. */

/** A cell whose value does not tell everything. */
export interface FileFormula {
  readonly row: number;
  readonly column: number;
  /** English names, commas, leading '='; FEED functions spelled FEED.NAME. */
  readonly formula?: string;
  /** The error that it shows, such as '#N/A'; its value is then null. */
  readonly error?: string;
}

/** Some rows of a sheet, one under the other. A sheet comes in several such pages, from its top. */
export interface FileRows {
  /** Number of the sheet, as `FileBook.sheets` lists them. */
  readonly sheet: number;
  /** The first of the rows. */
  readonly row: number;
  /** By row, then column, as far as the row holds anything; null where a cell holds nothing. */
  readonly values: readonly (readonly CellValue[])[];
  readonly formulas: readonly FileFormula[];
  /** As `values`: which look a cell has, counted from 1 over all pages; 0 for an ordinary one. */
  readonly looks: readonly (readonly number[])[];
  /** Looks that no earlier page has used, in the order of their numbers. */
  readonly newLooks: readonly Partial<Style>[];
}

/** Size of a row in points, or of a column in characters; undefined where nobody chose one. */
export interface FileSize {
  readonly at: number;
  readonly size?: number;
  readonly hidden?: true;
}

/** How a sheet prints; all that is in use where there is no area. */
export interface FilePage {
  readonly area?: Area;
  readonly landscape: boolean;
  /** Rows from the top that stand on every page. */
  readonly repeatRows: number;
  readonly pagesHigh?: number;
}

/** What may be entered in some cells. */
export interface FileRule extends DataValidationWithFormulae {
  readonly areas: readonly Area[];
}

export interface FileNote {
  readonly row: number;
  readonly column: number;
  readonly text: string;
}

export interface FileChart {
  readonly type: 'bar' | 'line';
  readonly title: string;
  readonly row: number;
  readonly column: number;
  readonly labels: Area;
  readonly series: readonly { readonly name: string; readonly values: Area }[];
}

export interface FileSheet {
  readonly name: string;
  readonly hidden: boolean;
  readonly merges: readonly Area[];
  readonly columnSizes: readonly FileSize[];
  readonly rowSizes: readonly FileSize[];
  /** Rows and columns that stay in sight. */
  readonly frozen: { readonly rows: number; readonly columns: number };
  readonly gridLines: boolean;
  readonly page?: FilePage;
  readonly rules: readonly FileRule[];
  readonly notes: readonly FileNote[];
  readonly charts: readonly FileChart[];
}

/** A name and what it refers to; of one sheet where that is given, else of the whole workbook. */
export interface FileName {
  readonly name: string;
  readonly refersTo: string;
  readonly sheet?: string;
}

/** What a file holds beside its cells. */
export interface FileBook {
  readonly sheets: readonly FileSheet[];
  readonly names: readonly FileName[];
  /** The sheet that was on top when the file was saved. */
  readonly active: string;
  /** What the file holds and is not read, in words: "2 pictures". */
  readonly left: readonly string[];
}

/** Is told what a file holds while it is read. */
export interface FileListener {
  readonly rows: (rows: FileRows) => void;
  /** Rows that were gone through, and how many are known of by now. */
  readonly progress: (done: number, of: number) => void;
}

/** A sheet of nothing but cells. */
export const plainSheet = (name: string): FileSheet => ({
  name,
  hidden: false,
  merges: [],
  columnSizes: [],
  rowSizes: [],
  frozen: { rows: 0, columns: 0 },
  gridLines: true,
  rules: [],
  notes: [],
  charts: [],
});
