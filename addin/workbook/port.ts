import type { Area, CellValue, Change } from './change';

/** A cell as it stands: its value now, and its formula where it has one. */
export interface CellState {
  readonly value: CellValue;
  /** English names, commas, leading '='; FEED functions spelled FEED.NAME. */
  readonly formula?: string;
  /** The spreadsheet's error value, such as '#N/A'; value is then null. */
  readonly error?: string;
}

export interface SheetOutline {
  readonly name: string;
  /** Rows and columns from A1 to the last cell in use; 0 for an empty sheet. */
  readonly rows: number;
  readonly columns: number;
  /** Merged areas, so that a title over a table is recognised. */
  readonly merges: readonly Area[];
}

export interface Outline {
  readonly sheets: readonly SheetOutline[];
  /** Workbook names and where they point; names that point nowhere are left out. */
  readonly names: Readonly<Record<string, Area>>;
  readonly active: string;
}

/** The cells of one area that was asked for; cells[row][column] counts from the area's own corner. */
export interface Block {
  readonly area: Area;
  readonly cells: readonly (readonly CellState[])[];
}

/** Outline and cells of one moment. */
export interface Snapshot extends Outline {
  readonly blocks: readonly Block[];
  /** How a host that does not compare cells outside itself knows again what it told. */
  readonly stamp?: string;
}

/** Areas to read, or which ones they are in a workbook of that outline. */
export type Wanted = readonly Area[] | ((outline: Outline) => readonly Area[]);

/** A spreadsheet, as much of it as the program needs. Every failure is a `WorkbookError` with a plain sentence. */
export interface Workbook {
  outline(): Promise<Outline>;
  /** What the areas hold now; an area may reach past the cells in use, those are empty. */
  read(wanted: Wanted): Promise<Snapshot>;
  /**
   * Applies every edit or none, as one step of the host's undo.
   *
   * @param seen what the change was decided from; where somebody has edited that since, nothing is written
   * @throws WorkbookMoved where somebody has
   */
  apply(change: Change, seen?: Snapshot): Promise<void>;
}

export class WorkbookError extends Error {
  override readonly name: string = 'WorkbookError';
}

/** What a change was decided from is no longer so. Nothing was written; decided again from the start, it may be. */
export class WorkbookMoved extends WorkbookError {
  override readonly name = 'WorkbookMoved';

  constructor() {
    super('The workbook was edited at the same moment, so nothing was written. Try again.');
  }
}
