import { contains, sameArea } from '../../../workbook/address';
import { only, type Area, type CellInput, type Edit } from '../../../workbook/change';
import { isFormula } from '../read/cellState';
import { inPieces, loadCells, type Loaded } from '../read/readCells';
import type { KnownBook } from '../read/readOutline';

import { outermost } from './aspect';
import { cellText } from './cellText';
import { byPiece, type Prepare } from './prepared';
import { BYTES_A_CALL, piece, type Piece } from './piece';

type Write = Extract<Edit, { kind: 'write' }>;

/** Cells and bytes in one piece of writing; several pieces go in one request where it holds them. */
const CELLS_AT_ONCE = 10_000;
const BYTES_AT_ONCE = 1_000_000;
const TEXT_FORMAT = '@';

/** What the program is told for a cell: null leaves it as it is. */
const told = (input: CellInput | undefined): string | number | boolean | null => {
  if (input === undefined) return null;
  if (input === null) return '';
  if (typeof input === 'object') return input.formula;
  return typeof input === 'string' ? cellText(input) : input;
};

const writtenArea = ({ sheet, row, column, cells }: Write): Area => ({
  sheet,
  row,
  column,
  rows: cells.length,
  columns: cells[0]?.length ?? 0,
});

const bytesOf = (cells: unknown): number =>
  BYTES_A_CALL + new TextEncoder().encode(JSON.stringify(cells)).length;

/** The number format of a cell as it stands; a sheet that is not read yet has none. */
type FormatAt = (sheet: string, row: number, column: number) => string | undefined;

type Formats = (string | null)[][];

const some = (formats: Formats): Formats | undefined =>
  formats.some((line) => line.some((format) => format !== null)) ? formats : undefined;

const isText = (input: CellInput | undefined): boolean => typeof input === 'string' && input !== '';

/**
 * Cells that are kept as text take whatever is put into them as it is spelled, so their format is taken off first;
 * cells that hold text get it back. Formats of the same change come afterwards and win.
 */
const freed = ({ cells, row, column, sheet }: Write, formatAt: FormatAt) => {
  const keptAsText = cells.map((line, down) =>
    line.map(
      (input, across) => input !== undefined && formatAt(sheet, row + down, column + across) === TEXT_FORMAT,
    ),
  );
  const formats = (format: (input: CellInput | undefined) => string | null): Formats | undefined =>
    some(
      cells.map((line, down) =>
        line.map((input, across) => (keptAsText[down]![across] ? format(input) : null)),
      ),
    );
  return {
    first: formats(() => 'General'),
    then: formats((input) => (isText(input) ? TEXT_FORMAT : null)),
  };
};

const writeRows = (edit: Write, formatAt: FormatAt): Piece[] => {
  const formulas = edit.cells.map((line) => line.map(told));
  const { first, then } = freed(edit, formatAt);
  const bytes = [formulas, first, then].reduce<number>((sum, rows) => sum + (rows ? bytesOf(rows) : 0), 0);
  const half = edit.cells.length >> 1;
  if (bytes > BYTES_AT_ONCE && half > 0)
    return [
      ...writeRows({ ...edit, cells: edit.cells.slice(0, half) }, formatAt),
      ...writeRows({ ...edit, row: edit.row + half, cells: edit.cells.slice(half) }, formatAt),
    ];
  const queue: Piece['queue'] = (at) => {
    const range = at.range(writtenArea(edit));
    if (first) range.numberFormat = first;
    range.formulas = formulas;
    if (then) range.numberFormat = then;
  };
  return [{ bytes, queue }];
};

/** Writes values and formulas, in pieces that a request holds. */
const writeCells = (edit: Write, formatAt: FormatAt): Piece[] =>
  inPieces(writtenArea(edit), CELLS_AT_ONCE).flatMap(({ row, rows }) =>
    writeRows({ ...edit, row, cells: edit.cells.slice(row - edit.row, row - edit.row + rows) }, formatAt),
  );

const formatCells = ({ area, format }: Extract<Edit, { kind: 'format' }>): Piece => {
  const formats = Array.from({ length: area.rows }, () => Array<string>(area.columns).fill(format));
  return {
    bytes: JSON.stringify(formats).length,
    queue: (at) => {
      at.range(area).numberFormat = formats;
    },
  };
};

const asGiven = ({ values, formulas }: Excel.Range): unknown[][] =>
  formulas.map((line: unknown[], row) =>
    line.map((formula, column) => {
      const value: unknown = values[row]?.[column];
      if (isFormula(formula, value) || typeof formula !== 'string') return formula;
      return formula === '' ? '' : cellText(formula);
    }),
  );

const putCellsBack = ({ area, range }: Loaded): Piece => {
  const formulas = asGiven(range);
  const formats = range.numberFormat.map((line: unknown[]) => [...line]);
  // A cell that is kept as text would take a number or a formula for the text of it.
  const free = formats.map((line) => line.map(() => 'General'));
  return {
    bytes: JSON.stringify([formulas, formats, free]).length,
    queue: (at) => {
      const now = at.range(area);
      now.numberFormat = free;
      now.formulas = formulas;
      now.numberFormat = formats;
    },
  };
};

const formatIn =
  (loaded: readonly Loaded[]): FormatAt =>
  (sheet, row, column) => {
    const piece = loaded.find(({ area }) => contains(area, sheet, row, column));
    const format: unknown = piece?.range.numberFormat[row - piece.area.row]?.[column - piece.area.column];
    return typeof format === 'string' ? format : undefined;
  };

const merging = ({ area }: Extract<Edit, { kind: 'merge' }>): Piece =>
  piece(1, (at) => at.range(area).merge(false));

const parting = ({ area }: Extract<Edit, { kind: 'merge' }>): Piece =>
  piece(1, (at) => at.range(area).unmerge());

const isMerged = (book: KnownBook, { area }: { readonly area: Area }): boolean =>
  book.sheets.some(({ merges }) => merges.some((merge) => sameArea(merge, area)));

/** What cells hold, their number formats, and merged cells, of which only the first keeps what it holds. */
export const prepareCells: Prepare = async ({ at, book, edits, over }) => {
  const areas = [
    ...only(over, 'write').map(writtenArea),
    ...only(over, 'format', 'merge').map(({ area }) => area),
  ];
  const loaded = await loadCells(at, outermost(areas), 'values,formulas,numberFormat');
  const formatAt = formatIn(loaded);
  const merges = only(edits, 'merge').filter((edit) => !isMerged(book, edit));
  return {
    pieces: [
      ...merges.map(merging),
      ...only(edits, 'write').flatMap((edit) => writeCells(edit, formatAt)),
      ...only(edits, 'format').map(formatCells),
    ],
    putBack: [...merges.filter((edit) => over.includes(edit)).map(parting), ...loaded.map(putCellsBack)].map(
      byPiece,
    ),
  };
};
