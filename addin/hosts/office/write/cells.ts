import type { Area, CellInput, Edit } from '../../../workbook/change';
import type { BookAt } from '../bookAt';
import { inPieces } from '../read/readCells';

import { cellText } from './cellText';
import { BYTES_A_CALL, type Step } from './step';

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

/** The area that an edit writes. */
export const writtenArea = ({ sheet, row, column, cells }: Write): Area => ({
  sheet,
  row,
  column,
  rows: cells.length,
  columns: cells[0]?.length ?? 0,
});

const bytesOf = (cells: unknown): number =>
  BYTES_A_CALL + new TextEncoder().encode(JSON.stringify(cells)).length;

/** The number format of a cell as it stands; a sheet that is not read yet has none. */
export type FormatAt = (sheet: string, row: number, column: number) => string | undefined;

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

const writeRows = (edit: Write, formatAt: FormatAt): Step[] => {
  const formulas = edit.cells.map((line) => line.map(told));
  const { first, then } = freed(edit, formatAt);
  const bytes = [formulas, first, then].reduce<number>((sum, rows) => sum + (rows ? bytesOf(rows) : 0), 0);
  const half = edit.cells.length >> 1;
  if (bytes > BYTES_AT_ONCE && half > 0)
    return [
      ...writeRows({ ...edit, cells: edit.cells.slice(0, half) }, formatAt),
      ...writeRows({ ...edit, row: edit.row + half, cells: edit.cells.slice(half) }, formatAt),
    ];
  const queue = (at: BookAt): void => {
    const range = at.range(writtenArea(edit));
    if (first) range.numberFormat = first;
    range.formulas = formulas;
    if (then) range.numberFormat = then;
  };
  return [{ bytes, queue }];
};

/** Writes values and formulas, in pieces that a request holds. */
export const writeCells = (edit: Write, formatAt: FormatAt): Step[] =>
  inPieces(writtenArea(edit), CELLS_AT_ONCE).flatMap(({ row, rows }) =>
    writeRows({ ...edit, row, cells: edit.cells.slice(row - edit.row, row - edit.row + rows) }, formatAt),
  );
