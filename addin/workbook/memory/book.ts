import type { Area, CellValue, ChartEdit, StyleToken } from '../change';
import { WorkbookError } from '../port';

export interface MemoryCell {
  readonly value: CellValue;
  readonly formula?: string;
  readonly error?: string;
}

export interface MemoryList {
  readonly area: Area;
  readonly source: readonly string[] | Area;
  readonly message: string;
}

export interface MemoryPage {
  readonly area: Area;
  readonly landscape: boolean;
  readonly repeatRows: number;
  readonly pagesHigh?: number | undefined;
}

/** What lies on cells rather than in them; of two entries on one cell the later counts. */
export type Overlay =
  | { readonly kind: 'format'; readonly area: Area; readonly format: string }
  | { readonly kind: 'style'; readonly area: Area; readonly style: StyleToken }
  | { readonly kind: 'wrap'; readonly area: Area }
  | { readonly kind: 'list'; readonly area: Area; readonly list: MemoryList }
  | { readonly kind: 'note'; readonly area: Area; readonly text: string };

export interface MemorySheet {
  readonly name: string;
  /** Rows of cells by row number, then by column number; empty cells are not there. */
  readonly cells: ReadonlyMap<number, ReadonlyMap<number, MemoryCell>>;
  readonly overlays: readonly Overlay[];
  readonly widths: ReadonlyMap<number, number>;
  readonly merges: readonly Area[];
  readonly frozen: { readonly rows: number; readonly columns: number };
  readonly charts: readonly ChartEdit[];
  readonly page?: MemoryPage;
}

/** A workbook as it stands at one moment. Nothing in it changes: a step makes the next book out of it. */
export interface MemoryBook {
  readonly sheets: readonly MemorySheet[];
  readonly names: Readonly<Record<string, Area>>;
  readonly active: { readonly sheet: string; readonly row: number; readonly column: number };
}

export const emptySheet = (name: string): MemorySheet => ({
  name,
  cells: new Map(),
  overlays: [],
  widths: new Map(),
  merges: [],
  frozen: { rows: 0, columns: 0 },
  charts: [],
});

export const emptyBook = (sheet: string): MemoryBook => ({
  sheets: [emptySheet(sheet)],
  names: {},
  active: { sheet, row: 0, column: 0 },
});

export const sheetIn = (book: MemoryBook, name: string): MemorySheet => {
  const sheet = book.sheets.find((candidate) => candidate.name === name);
  if (!sheet) throw new WorkbookError(`There is no sheet “${name}”.`);
  return sheet;
};

export const withSheet = (
  book: MemoryBook,
  name: string,
  next: (sheet: MemorySheet) => MemorySheet,
): MemoryBook => ({
  ...book,
  sheets: book.sheets.map((sheet) => (sheet.name === name ? next(sheet) : sheet)),
});

/** Last overlay of a kind on a cell. */
export const overlayAt = <Kind extends Overlay['kind']>(
  sheet: MemorySheet,
  kind: Kind,
  row: number,
  column: number,
): Extract<Overlay, { kind: Kind }> | undefined =>
  sheet.overlays.findLast(
    (overlay): overlay is Extract<Overlay, { kind: Kind }> =>
      overlay.kind === kind &&
      row >= overlay.area.row &&
      row < overlay.area.row + overlay.area.rows &&
      column >= overlay.area.column &&
      column < overlay.area.column + overlay.area.columns,
  );
