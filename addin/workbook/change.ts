/**
 * The language of edits. A use case answers with a `Change`; a host applies it whole or not at all, as one undo
 * step where it can. Everything here is plain JSON. Rows and columns count from 0.
 */

/** What a cell holds as a value; null is an empty cell. Text stays text, whatever it begins with. */
export type CellValue = string | number | boolean | null;

/** English function names, commas between arguments, A1 references: "=FEED.FILLS(B3,60,\"gal\")". */
export interface FormulaText {
  readonly formula: string;
}

/** What is written to a cell; undefined leaves the cell as it is (null over JSON is an empty cell). */
export type CellInput = CellValue | FormulaText;

export interface Area {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
}

export const STYLES = [
  'plain',
  'title',
  'answer',
  'header',
  'numberHeader',
  'input',
  'computed',
  'time',
  'total',
  'totalTime',
  'warning',
  'note',
  'big',
  'bigNumber',
] as const;
/** Looks are named by meaning; each host draws them so that input and computed differ without colour alone. */
export type StyleToken = (typeof STYLES)[number];

export type Edit =
  /** Refused where a sheet of that name exists (letter case ignored). */
  | { readonly kind: 'addSheet'; readonly sheet: string }
  | {
      readonly kind: 'write';
      readonly sheet: string;
      readonly row: number;
      readonly column: number;
      readonly cells: readonly (readonly CellInput[])[];
    }
  /** A spreadsheet number format such as '0.0', '#,##0', 'yyyy-mm-dd', 'hh:mm', '@'. */
  | { readonly kind: 'format'; readonly area: Area; readonly format: string }
  /** Width in characters of the sheet's ordinary font. */
  | {
      readonly kind: 'width';
      readonly sheet: string;
      readonly column: number;
      readonly columns: number;
      readonly characters: number;
    }
  | { readonly kind: 'style'; readonly area: Area; readonly style: StyleToken }
  /** Wraps the text of the area's cells on several lines. */
  | { readonly kind: 'wrap'; readonly area: Area }
  | { readonly kind: 'merge'; readonly area: Area }
  | { readonly kind: 'freeze'; readonly sheet: string; readonly rows: number; readonly columns: number }
  /** Allowed entries of the area: given ones (no commas inside), or those of another area. */
  | {
      readonly kind: 'list';
      readonly area: Area;
      readonly source: readonly string[] | Area;
      readonly message: string;
    }
  /** Defines or redefines a workbook name. */
  | { readonly kind: 'name'; readonly name: string; readonly area: Area }
  | {
      readonly kind: 'note';
      readonly sheet: string;
      readonly row: number;
      readonly column: number;
      readonly text: string;
    }
  | ChartEdit
  | PageEdit
  | { readonly kind: 'activate'; readonly sheet: string; readonly row: number; readonly column: number };

/** White on each side of a printed page, mm: little, so that a card stays on one page, and what printers manage. */
export const PAGE_MARGIN = 10;

/** How the sheet prints: the area, one page wide, rows repeated on each page, `PAGE_MARGIN` around it. */
export interface PageEdit {
  readonly kind: 'page';
  readonly area: Area;
  readonly landscape: boolean;
  readonly repeatRows: number;
  /** Made smaller to be this many pages high at most; left out, it runs to as many as it takes. */
  readonly pagesHigh?: number;
}

export interface ChartEdit {
  readonly kind: 'chart';
  /** Stable id: a chart of the same id on the sheet is replaced. */
  readonly id: string;
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly type: 'bar' | 'line';
  readonly title: string;
  /** The finding in words, for those who cannot see the chart. */
  readonly finding: string;
  readonly labels: Area;
  readonly series: readonly { readonly name: string; readonly values: Area }[];
}

export interface Change {
  /** What the undo entry and the message say: "Plan the round". */
  readonly title: string;
  readonly edits: readonly Edit[];
  /** What the user is told of it besides what he asked for, in whole sentences. */
  readonly says?: readonly string[];
}

/** Edits of some kinds. */
export type EditOf<K extends Edit['kind']> = Extract<Edit, { kind: K }>;

/** The edits of some kinds, in their order. */
export const only = <K extends Edit['kind']>(edits: readonly Edit[], ...kinds: readonly K[]): EditOf<K>[] =>
  edits.filter((edit): edit is EditOf<K> => kinds.some((kind) => edit.kind === kind));
