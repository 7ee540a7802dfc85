import type { Area, CellInput, Change, StyleToken } from './change';
import { applyEdit, type Answer } from './memory/applyEdit';
import {
  emptyBook,
  overlayAt,
  sheetIn,
  type MemoryBook,
  type MemoryCell,
  type MemoryList,
  type MemorySheet,
} from './memory/book';
import { deleteSheet, moveSheet, renameSheet, reorderRows, shiftBook } from './memory/userActions';
import type { CellState, Outline, SheetOutline, Snapshot, Workbook } from './port';
import { areasWanted, refuseMoved } from './seen';
import { refuseNewer, shapeAreas } from './shapes';
import { validateAreas, validateChange } from './validateChange';

/** What lies on one cell of the memory workbook. */
export interface MemoryLook {
  readonly style: StyleToken;
  readonly format?: string;
  readonly wrapped: boolean;
  readonly list?: MemoryList;
  readonly note?: string;
}

/** What a user does by hand. Each is one step of the undo. */
export interface MemoryUser {
  type(sheet: string, row: number, column: number, input: CellInput): void;
  insertRows(sheet: string, at: number, count: number): void;
  deleteRows(sheet: string, at: number, count: number): void;
  insertColumns(sheet: string, at: number, count: number): void;
  deleteColumns(sheet: string, at: number, count: number): void;
  reorderRows(sheet: string, first: number, order: readonly number[]): void;
  renameSheet(from: string, to: string): void;
  moveSheet(sheet: string, to: number): void;
  deleteSheet(sheet: string): void;
}

export interface MemoryWorkbook extends Workbook {
  /** The whole workbook as it stands. */
  inspect(): MemoryBook;
  look(sheet: string, row: number, column: number): MemoryLook;
  cell(sheet: string, row: number, column: number): CellState;
  /** Takes back the last step; false where there is none. */
  undo(): boolean;
  readonly user: MemoryUser;
}

export interface MemoryOptions {
  /** Cells that are there at the start, from A1, a sheet each; without it one empty sheet "Sheet1". */
  readonly sheets?: Readonly<Record<string, readonly (readonly CellInput[])[]>>;
  /** What formulas come to; without it they have no value. */
  readonly answer?: Answer;
}

const used = (sheet: MemorySheet): { rows: number; columns: number } => {
  let rows = 0;
  let columns = 0;
  for (const [row, cells] of sheet.cells) {
    if (cells.size === 0) continue;
    rows = Math.max(rows, row + 1);
    for (const column of cells.keys()) columns = Math.max(columns, column + 1);
  }
  return { rows, columns };
};

const outlineOf = (book: MemoryBook): Outline => ({
  sheets: book.sheets.map((sheet): SheetOutline => ({
    name: sheet.name,
    ...used(sheet),
    merges: sheet.merges,
  })),
  names: book.names,
  active: book.active.sheet,
});

const stateOf = (cell: MemoryCell | undefined): CellState => cell ?? { value: null };

const blockOf = (book: MemoryBook, area: Area) => {
  const sheet = sheetIn(book, area.sheet);
  return {
    area,
    cells: Array.from({ length: area.rows }, (_, row) => {
      const inRow = sheet.cells.get(area.row + row);
      return Array.from({ length: area.columns }, (_, column) => stateOf(inRow?.get(area.column + column)));
    }),
  };
};

const started = ({ sheets, answer = () => null }: MemoryOptions): MemoryBook => {
  const names = Object.keys(sheets ?? {});
  const [first = 'Sheet1', ...others] = names;
  let book = emptyBook(first);
  for (const sheet of others) book = applyEdit(book, { kind: 'addSheet', sheet }, answer);
  for (const sheet of names) {
    const cells = sheets?.[sheet] ?? [];
    book = applyEdit(book, { kind: 'write', sheet, row: 0, column: 0, cells }, answer);
  }
  return book;
};

/**
 * A workbook in memory: no grid, no files, no recalculation. Formulas are kept as text and have the value that
 * `answer` supplies. Used where no spreadsheet is at hand, and by tests, which play the user with `user`.
 *
 * @example
 * const workbook = memoryWorkbook({ sheets: { List: [['Rose', 'Bed'], ['Ada', 'East']] } });
 * await workbook.apply({ title: 'Try', edits: [{ kind: 'addSheet', sheet: 'Plants' }] });
 */
export const memoryWorkbook = (options: MemoryOptions = {}): MemoryWorkbook => {
  const answer = options.answer ?? (() => null);
  let book = started(options);
  const before: MemoryBook[] = [];

  const step = (next: MemoryBook): void => {
    before.push(book);
    book = next;
  };
  const shift = (sheet: string, axis: 'row' | 'column', at: number, count: number) =>
    step(shiftBook(book, { sheet, axis, at, count }));

  return {
    outline: async () => structuredClone(outlineOf(book)),
    read: async (wanted): Promise<Snapshot> => {
      const outline = outlineOf(book);
      const areas = areasWanted(wanted, outline);
      validateAreas(areas, outline);
      return structuredClone({ ...outline, blocks: areas.map((area) => blockOf(book, area)) });
    },
    apply: async (change: Change, seen?: Snapshot) => {
      const outline = outlineOf(book);
      refuseMoved(seen, outline, (area) => blockOf(book, area));
      refuseNewer(change, { ...outline, blocks: shapeAreas(outline).map((area) => blockOf(book, area)) });
      validateChange(change, outline);
      step(structuredClone(change.edits).reduce((next, edit) => applyEdit(next, edit, answer), book));
    },
    inspect: () => book,
    cell: (sheet, row, column) => stateOf(sheetIn(book, sheet).cells.get(row)?.get(column)),
    look: (name, row, column) => {
      const sheet = sheetIn(book, name);
      return {
        style: overlayAt(sheet, 'style', row, column)?.style ?? 'plain',
        format: overlayAt(sheet, 'format', row, column)?.format,
        wrapped: overlayAt(sheet, 'wrap', row, column) !== undefined,
        list: overlayAt(sheet, 'list', row, column)?.list,
        note: overlayAt(sheet, 'note', row, column)?.text,
      };
    },
    undo: () => {
      const last = before.pop();
      if (last) book = last;
      return last !== undefined;
    },
    user: {
      type: (sheet, row, column, input) =>
        step(applyEdit(book, { kind: 'write', sheet, row, column, cells: [[input]] }, answer)),
      insertRows: (sheet, at, count) => shift(sheet, 'row', at, count),
      deleteRows: (sheet, at, count) => shift(sheet, 'row', at, -count),
      insertColumns: (sheet, at, count) => shift(sheet, 'column', at, count),
      deleteColumns: (sheet, at, count) => shift(sheet, 'column', at, -count),
      reorderRows: (sheet, first, order) => step(reorderRows(book, sheet, first, order)),
      renameSheet: (from, to) => step(renameSheet(book, from, to)),
      moveSheet: (sheet, to) => step(moveSheet(book, sheet, to)),
      deleteSheet: (sheet) => step(deleteSheet(book, sheet)),
    },
  };
};
