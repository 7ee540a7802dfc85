import { areaNamed, cellAt, isEmpty, labelOf, sheetNamed } from '../snapshot';
import type { Area } from '../change';
import type { Snapshot } from '../port';
import { isComputed, type Table } from './table';

/** Where a table stands, or will stand. */
export interface Site {
  readonly table: Table;
  readonly sheet: string;
  readonly header: number;
  /** Column of each of the table's columns by its key, those about to be made included. */
  readonly columns: Readonly<Record<string, number>>;
  /** Keys of columns about to be made. */
  readonly missing: readonly string[];
  /** Keys of other columns that the sheet does not have. */
  readonly absent: readonly string[];
  /** First and last column of the header row, the user's own columns in between and missing ones included. */
  readonly first: number;
  readonly last: number;
  /** Rows in use: those with anything in a column that the user fills in. */
  readonly rows: readonly number[];
  /** First row with nothing below it in any of the table's columns or the user's own. */
  readonly end: number;
  /** True where the table is not there yet. */
  readonly fresh: boolean;
}

const spelling = (text: string): string => text.trim().replace(/\s+/g, ' ').toLowerCase();

/** The header row around the named cells: as far as headers stand side by side. */
const headerSpan = (snapshot: Snapshot, named: Area): { first: number; last: number } => {
  const width = sheetNamed(snapshot, named.sheet)?.columns ?? 0;
  const has = (column: number) => !isEmpty(cellAt(snapshot, named.sheet, named.row, column));
  let first = named.column;
  let last = named.column + named.columns - 1;
  while (first > 0 && has(first - 1)) first -= 1;
  while (last + 1 < width && has(last + 1)) last += 1;
  return { first, last };
};

const emptyColumn = (snapshot: Snapshot, sheet: string, column: number): boolean => {
  const rows = sheetNamed(snapshot, sheet)?.rows ?? 0;
  for (let row = 0; row < rows; row += 1) if (!isEmpty(cellAt(snapshot, sheet, row, column))) return false;
  return true;
};

/**
 * The table where its workbook name says it is; undefined where the workbook has no such name.
 *
 * @param isMade which of the columns that it does not have are about to be made
 */
export const locateTable = (
  table: Table,
  snapshot: Snapshot,
  isMade: (key: string) => boolean = () => false,
): Site | undefined => {
  const named = areaNamed(snapshot, table.name);
  if (!named) return undefined;
  const { sheet, row: header } = named;
  const span = headerSpan(snapshot, named);
  const byHeader = new Map<string, number>();
  for (let column = span.last; column >= span.first; column -= 1)
    byHeader.set(spelling(labelOf(cellAt(snapshot, sheet, header, column))), column);

  const columns: Record<string, number> = {};
  const missing: string[] = [];
  const absent: string[] = [];
  let last = span.last;
  for (const [key, column] of Object.entries(table.columns)) {
    const found = byHeader.get(spelling(column.header));
    if (found !== undefined) columns[key] = found;
    else (isMade(key) ? missing : absent).push(key);
  }
  const inputs = Object.entries(table.columns).flatMap(([key, column]) =>
    isComputed(column) || columns[key] === undefined ? [] : [columns[key]],
  );
  for (const key of missing) {
    do last += 1;
    while (!emptyColumn(snapshot, sheet, last));
    columns[key] = last;
  }

  const rows: number[] = [];
  let end = header + 1;
  const height = sheetNamed(snapshot, sheet)?.rows ?? 0;
  const holds = (row: number, column: number) => !isEmpty(cellAt(snapshot, sheet, row, column));
  for (let row = header + 1; row < height; row += 1) {
    const inUse = inputs.some((column) => holds(row, column));
    if (inUse) rows.push(row);
    let anything = inUse;
    for (let column = span.first; column <= span.last && !anything; column += 1)
      anything = holds(row, column);
    if (anything) end = row + 1;
  }
  return { table, sheet, header, columns, missing, absent, first: span.first, last, rows, end, fresh: false };
};

/** A table that is still to be made, with its columns side by side. */
export const freshSite = (table: Table, sheet: string, header: number, first: number): Site => {
  const keys = Object.keys(table.columns);
  return {
    table,
    sheet,
    header,
    columns: Object.fromEntries(keys.map((key, index) => [key, first + index])),
    missing: keys,
    absent: [],
    first,
    last: first + keys.length - 1,
    rows: [],
    end: header + 1,
    fresh: true,
  };
};

/** The header row, as the table's workbook name points at it. */
export const headerArea = (site: Site): Area => ({
  sheet: site.sheet,
  row: site.header,
  column: site.first,
  rows: 1,
  columns: site.last - site.first + 1,
});

const SPARE = 500;
const ROUND_TO = 1000;
// A table that fills its reach beyond this gets a longer one.
const NEARLY_FULL = 0.75;

/** Rows below the header that formulas look at: the table's reach, more where a long list needs it. */
export const reachOf = (site: Site, added = 0): number => {
  const used = site.end - site.header - 1 + added;
  const { reach } = site.table;
  return used <= reach * NEARLY_FULL ? reach : Math.ceil((used + SPARE) / ROUND_TO) * ROUND_TO;
};
