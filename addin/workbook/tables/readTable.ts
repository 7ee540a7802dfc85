import * as z from 'zod';
import { cellSentence } from '../fields/cellSentence';
import type { Problem } from '../garden';
import type { CellState, Snapshot } from '../port';
import { areaNamed, cellAt } from '../snapshot';
import { locateTable, type Site } from './site';
import { isComputed, measuresOf, unitKey, type Columns, type RowOf, type Table } from './table';
import { cellWords, whereWords } from './template';

export interface TableRead<C extends Columns> {
  /** Where the table stands; undefined where the workbook has none. */
  readonly site?: Site;
  readonly rows: readonly RowOf<Table<C>>[];
  readonly heads: Readonly<Record<string, string>>;
  /** What could not be read; those rows are not among the rows. */
  readonly problems: readonly Problem[];
}

const inputsOf = (table: Table): { key: string; header: string; schema: z.ZodType<unknown> }[] =>
  Object.entries(table.columns).flatMap(([key, column]) =>
    isComputed(column) ? [] : [{ key, header: column.header, schema: column.holds.schema }],
  );

/** A row of the table as zod checks it. */
const rowSchema = (table: Table): z.ZodObject<Record<string, z.ZodType>> =>
  z.object(Object.fromEntries(inputsOf(table).map(({ key, schema }) => [key, schema])));

const readHeads = (
  table: Table,
  site: Site | undefined,
  snapshot: Snapshot,
): { heads: Record<string, string>; problems: Problem[] } => {
  const heads: Record<string, string> = {};
  const problems: Problem[] = [];
  for (const head of table.heads ?? []) {
    const area = areaNamed(snapshot, head.name);
    if (!area) {
      if (site && !head.holds.schema.safeParse(null).success) {
        const sentence = `${site.sheet} has no cell “${head.label}” any more; keep the ${table.title.toLowerCase()} again, and it comes back.`;
        problems.push({ place: table.place, sheet: site.sheet, row: 0, sentence });
      }
      continue;
    }
    const cell = cellAt(snapshot, area.sheet, area.row, area.column);
    const parsed = head.holds.schema.safeParse(cell.error === undefined ? cell.value : undefined);
    if (parsed.success) heads[head.key] = parsed.data;
    else {
      const where = cellWords(area.sheet, area.row, area.column);
      const sentence = cellSentence(`${where} (${head.label})`, cell, parsed.error.issues[0]!.message);
      problems.push({ place: table.place, sheet: area.sheet, row: area.row, column: area.column, sentence });
    }
  }
  return { heads, problems };
};

const at = (table: Table, place: Pick<Problem, 'sheet' | 'row' | 'column'>, sentence: string): Problem => ({
  place: table.place,
  ...place,
  sentence,
});

/** Columns that must be there and are not. */
const lostColumns = (table: Table, site: Site): Problem[] =>
  inputsOf(table)
    .filter(({ key, schema }) => site.absent.includes(key) && !schema.safeParse(null).success)
    .map(({ header }) => {
      const sentence = `${site.sheet} has no column “${header}” beside the others in row ${site.header + 1}; put the header back.`;
      return at(table, { sheet: site.sheet, row: site.header }, sentence);
    });

/** Numbers and their units as the measures they are; a number whose unit is blank is told, since nothing is guessed. */
const withMeasures = (table: Table, site: Site, cells: Readonly<Record<string, unknown>>, row: number) => {
  const value = { ...cells };
  const problems: Problem[] = [];
  for (const key of measuresOf(table)) {
    const unit = unitKey(key);
    const [given, token] = [cells[key], cells[unit]];
    delete value[unit];
    value[key] = given === undefined || token === undefined ? undefined : { value: given, unit: token };
    if (given === undefined || given === 0 || token !== undefined) continue;
    const where = whereWords(site.sheet, row, table.columns[unit]!.header);
    const sentence = `${where}: nothing was given beside ${String(given)}; use a unit.`;
    problems.push(at(table, { sheet: site.sheet, row, column: site.columns[unit] }, sentence));
  }
  return { value, problems };
};

const readRow = (
  table: Table,
  schema: z.ZodType,
  site: Site,
  cells: readonly (readonly [string, CellState])[],
  row: number,
) => {
  const parsed = schema.safeParse(Object.fromEntries(cells.map(([key, cell]) => [key, cell.value])));
  const allowed = new Map(
    (parsed.error?.issues ?? []).map((issue) => [String(issue.path[0]), issue.message]),
  );
  const problems = cells.flatMap(([key, cell]) => {
    const use = allowed.get(key) ?? (cell.error === undefined ? undefined : 'a value');
    if (use === undefined) return [];
    const where = whereWords(site.sheet, row, table.columns[key]!.header);
    return [at(table, { sheet: site.sheet, row, column: site.columns[key] }, cellSentence(where, cell, use))];
  });
  return problems.length > 0 || !parsed.success
    ? { problems }
    : withMeasures(table, site, parsed.data as Readonly<Record<string, unknown>>, row);
};

/** Every row of a table as typed values, and what could not be read row by row. */
export const readTable = <C extends Columns>(table: Table<C>, snapshot: Snapshot): TableRead<C> => {
  const site = locateTable(table, snapshot);
  const { heads, problems } = readHeads(table, site, snapshot);
  if (!site) return { rows: [], heads, problems };
  const lost = lostColumns(table, site);
  if (lost.length > 0) return { site, rows: [], heads, problems: [...problems, ...lost] };
  const schema = rowSchema(table);
  const keys = inputsOf(table).map(({ key }) => key);
  const there = keys.filter((key) => !site.absent.includes(key));
  const absent = keys
    .filter((key) => site.absent.includes(key))
    .map((key) => [key, { value: null }] as const);
  const rows: RowOf<Table<C>>[] = [];
  for (const row of site.rows) {
    const cells = there.map((key) => [key, cellAt(snapshot, site.sheet, row, site.columns[key]!)] as const);
    const read = readRow(table, schema, site, [...cells, ...absent], row);
    problems.push(...read.problems);
    if ('value' in read) rows.push({ ...read.value, row } as RowOf<Table<C>>);
  }
  return { site, rows, heads, problems };
};
