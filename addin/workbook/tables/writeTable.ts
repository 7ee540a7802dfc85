import { sameArea } from '../address';
import type { Area, CellInput, Edit } from '../change';
import type { Snapshot } from '../port';
import { areaNamed, cellAt, labelOf } from '../snapshot';
import { write, writeColumn, type Draft } from './edits';
import { headerArea, type Site } from './site';
import { offered } from './form';
import { inputOf, isComputed, isOfNumbers, type Table } from './table';
import { isRenewed, type Renewed } from './renewed';
import { canFill, columnArea, fillTemplate, type Places } from './template';

/** What an action wants in a table. Rows are by column key; a key left out is blank, or stays as it is. */
export interface TableWish {
  /** Rows that ought to be there. One that is there already stays as the user has it. */
  readonly add?: readonly Readonly<Record<string, unknown>>[];
  /** Cells that the action is about: they are written over in the row of that identity, which is added if need be. */
  readonly set?: readonly Readonly<Record<string, unknown>>[];
  /** Cells by row, for tables whose rows have no identity. */
  readonly cells?: readonly { readonly row: number; readonly key: string; readonly value: unknown }[];
  readonly heads?: Readonly<Record<string, string>>;
}

/** A wish against what the sheet holds: cells to write over, and rows to put below. */
export interface TablePlan {
  readonly set: readonly { readonly row: number; readonly key: string; readonly value: unknown }[];
  readonly added: readonly Readonly<Record<string, unknown>>[];
}

// Rows below the last one that look ready to be filled in.
const READY_ROWS = 100;
const PURPOSE_ROW = 1;
const FIRST_HEAD_ROW = 2;

/** Row of the header in a sheet made by us: title, purpose, heads, a blank row. */
export const headerRowOf = (table: Table): number => FIRST_HEAD_ROW + (table.heads?.length ?? 0) + 1;

const identityOf = (table: Table, entry: (key: string) => string): string =>
  table.identity.map((key) => entry(key).trim().toLowerCase()).join('\u0000');

/** True for a column that stands nowhere yet. */
const hasNot = ({ missing, absent }: Site, key: string): boolean =>
  missing.includes(key) || absent.includes(key);

const labelOfValue = (value: unknown): string => String(inputOf(value) ?? '');

export const planTable = (site: Site, snapshot: Snapshot, wish: TableWish = {}): TablePlan => {
  const { table } = site;
  const keyed = table.identity.length > 0;
  const rowOf = new Map<string, number>();
  if (keyed)
    for (const row of [...site.rows].reverse())
      rowOf.set(
        identityOf(table, (key) =>
          hasNot(site, key) ? '' : labelOf(cellAt(snapshot, site.sheet, row, site.columns[key]!)),
        ),
        row,
      );
  const added = new Map<string, Record<string, unknown>>();
  const set = [...(wish.cells ?? [])];
  const wanted = (row: Readonly<Record<string, unknown>>, over: boolean, index: number) => {
    const id = keyed ? identityOf(table, (key) => labelOfValue(row[key])) : `${over} ${index}`;
    const there = rowOf.get(id);
    if (there === undefined) {
      const before = added.get(id);
      added.set(id, over ? { ...before, ...row } : { ...row, ...before });
    } else if (over)
      for (const [key, value] of Object.entries(row))
        if (!table.identity.includes(key)) set.push({ row: there, key, value });
  };
  (wish.add ?? []).forEach((row, index) => wanted(row, false, index));
  (wish.set ?? []).forEach((row, index) => wanted(row, true, index));
  return { set, added: [...added.values()] };
};

const looksOf = (site: Site, places: Places, key: string, row: number, rows: number): Edit[] => {
  const column = site.table.columns[key]!;
  const area: Area = { sheet: site.sheet, row, column: site.columns[key]!, rows, columns: 1 };
  const edits: Edit[] = [{ kind: 'style', area, style: isComputed(column) ? 'computed' : 'input' }];
  if (column.format) edits.push({ kind: 'format', area, format: column.format });
  const list = isComputed(column) ? undefined : (column.list ?? offered(column.holds));
  if (list) {
    const { source, message } = list;
    const inTable = 'table' in source;
    if (!inTable || places.sites[source.table]?.columns[source.column] !== undefined)
      edits.push({
        kind: 'list',
        area,
        source: inTable ? columnArea(places, source.table, source.column) : source,
        message,
      });
  }
  return edits;
};

const makeColumns = (site: Site, draft: Draft): void => {
  for (const key of site.missing) {
    const column = site.table.columns[key]!;
    const at = site.columns[key]!;
    const head: Area = { sheet: site.sheet, row: site.header, column: at, rows: 1, columns: 1 };
    draft.values.push(write(site.sheet, site.header, at, [[column.header]]));
    draft.looks.push(
      { kind: 'width', sheet: site.sheet, column: at, columns: 1, characters: column.width },
      { kind: 'style', area: head, style: isOfNumbers(column) ? 'numberHeader' : 'header' },
      { kind: 'wrap', area: head },
    );
    if (column.note)
      draft.last.push({ kind: 'note', sheet: site.sheet, row: site.header, column: at, text: column.note });
  }
};

const makeHeading = (site: Site, draft: Draft): void => {
  const { table, sheet, header } = site;
  if (table.beside) return;
  const at = (row: number): Area => ({ sheet, row, column: 0, rows: 1, columns: 1 });
  draft.values.push(write(sheet, 0, 0, [[table.title], [table.purpose]]));
  draft.looks.push(
    { kind: 'style', area: at(0), style: 'title' },
    { kind: 'style', area: at(PURPOSE_ROW), style: 'note' },
  );
  draft.last.push({ kind: 'freeze', sheet, rows: header + 1, columns: 1 });
};

/** Heads are made with the sheet, and again at its top where their cell was deleted. */
const writeHeads = (site: Site, snapshot: Snapshot, places: Places, wish: TableWish, draft: Draft): void => {
  site.table.heads?.forEach((head) => {
    const there = areaNamed(snapshot, head.name);
    const area = places.cells[head.name]!;
    const value = wish.heads?.[head.key];
    if (!there || site.fresh) {
      const { sheet, row, column } = area;
      draft.values.push(write(sheet, row, column - 1, [[head.label, value ?? null]]));
      draft.looks.push({ kind: 'style', area, style: 'input' });
      if (head.list) draft.looks.push({ kind: 'list', area, source: head.list, message: head.message ?? '' });
      draft.names.push({ kind: 'name', name: head.name, area });
    } else if (value !== undefined && value !== labelOf(cellAt(snapshot, area.sheet, area.row, area.column)))
      draft.values.push(write(area.sheet, area.row, area.column, [[value === '' ? null : value]]));
  });
};

const addRows = (site: Site, plan: TablePlan, draft: Draft): void => {
  if (plan.added.length === 0) return;
  for (const [key, column] of Object.entries(site.table.columns)) {
    if (isComputed(column) || site.absent.includes(key)) continue;
    const cells = plan.added.map((row, index) => [site.end + index, inputOf(row[key])] as const);
    const given = cells.filter(([, cell]) => cell !== null);
    draft.values.push(...writeColumn(site.sheet, site.columns[key]!, given));
  }
};

const setCells = (site: Site, snapshot: Snapshot, plan: TablePlan, draft: Draft): void => {
  const byKey = new Map<string, [number, CellInput][]>();
  for (const { row, key, value } of plan.set) {
    const column = site.columns[key];
    if (column === undefined) continue;
    const before = site.missing.includes(key) ? null : cellAt(snapshot, site.sheet, row, column);
    const next = inputOf(value);
    if (
      before !== null &&
      before.formula === undefined &&
      before.error === undefined &&
      before.value === next
    )
      continue;
    byKey.set(key, [...(byKey.get(key) ?? []), [row, next]]);
  }
  for (const [key, cells] of byKey) draft.values.push(...writeColumn(site.sheet, site.columns[key]!, cells));
};

const fillFormulas = (
  site: Site,
  snapshot: Snapshot,
  places: Places,
  plan: TablePlan,
  earlier: Renewed,
  draft: Draft,
): void => {
  const rows = [...site.rows, ...plan.added.map((_row, index) => site.end + index)];
  for (const [key, column] of Object.entries(site.table.columns)) {
    const at = site.columns[key];
    if (!isComputed(column) || at === undefined || !canFill(column.formula, places, site)) continue;
    const [formulaOf, ...earlierOf] = [column.formula, ...(earlier[`${site.table.key}.${key}`] ?? [])]
      .filter((template) => canFill(template, places, site))
      .map((template) => fillTemplate(template, places, site));
    const cells = rows.flatMap((row): [number, CellInput][] => {
      const formula = formulaOf!(row);
      const now = site.missing.includes(key) ? undefined : cellAt(snapshot, site.sheet, row, at);
      const before = earlierOf.map((of) => of(row));
      return isRenewed(now, formula, before) ? [[row, { formula }]] : [];
    });
    draft.formulas.push(...writeColumn(site.sheet, at, cells));
  }
};

/** Edits that bring a table to what an action wants, and repair what the user's changes left without its formula. */
export const writeTable = (
  site: Site,
  snapshot: Snapshot,
  places: Places,
  wish: TableWish,
  plan: TablePlan,
  earlier: Renewed,
  draft: Draft,
): void => {
  if (site.fresh) makeHeading(site, draft);
  makeColumns(site, draft);
  writeHeads(site, snapshot, places, wish, draft);
  setCells(site, snapshot, plan, draft);
  addRows(site, plan, draft);
  fillFormulas(site, snapshot, places, plan, earlier, draft);
  const below = site.end + plan.added.length;
  for (const key of Object.keys(site.columns)) {
    const whole = site.missing.includes(key);
    const from = whole ? site.header + 1 : site.end;
    if (whole || plan.added.length > 0)
      draft.looks.push(...looksOf(site, places, key, from, below + READY_ROWS - from));
  }
  const area = headerArea(site);
  const named = areaNamed(snapshot, site.table.name);
  if (!named || site.fresh || !sameArea(named, area))
    draft.names.push({ kind: 'name', name: site.table.name, area });
};
