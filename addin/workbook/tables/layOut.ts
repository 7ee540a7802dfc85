import type { System } from '../../core';
import type { Area } from '../change';
import type { Snapshot } from '../port';
import { areaNamed, cellAt, isEmpty, labelOf, sheetNamed } from '../snapshot';
import type { Form } from './form';
import { freshForm, locateForm, type FormSite } from './formSite';
import { hasForm } from './readForm';
import type { Renewed } from './renewed';
import { freshSite, locateTable, type Site } from './site';
import { inputOf, type Table } from './table';
import type { Places } from './template';
import type { FormWish } from './writeForm';
import { headerRowOf, type TableWish } from './writeTable';

/** Sheets that belong together: their formulas may refer to each other. */
export interface SheetSet {
  /** In the order in which the sheets are made. */
  readonly sheets: readonly (
    { readonly kind: 'table'; readonly table: Table } | { readonly kind: 'form'; readonly form: Form }
  )[];
}

export interface SheetWishes {
  /** What new sheets start with. */
  readonly measures: System;
  readonly tables?: Readonly<Record<string, TableWish>>;
  readonly forms?: Readonly<Record<string, FormWish>>;
  /**
   * What is made although nothing is put into it: columns as "mix.label", lines by their names, and sheets by the key
   * of their table or form. What was deleted and is not among them stays away.
   */
  readonly make?: 'all' | ReadonlySet<string>;
  /** Formulas that give way to those of today, wherever they stand as they were written. */
  readonly renew?: Renewed;
}

/** A title that no sheet has yet: "Plants", or "Plants 2" where the user has a sheet of that name. */
export const freeTitle = (wanted: string, taken: readonly string[]): string => {
  const known = new Set(taken.map((title) => title.toLowerCase()));
  let title = wanted;
  for (let number = 2; known.has(title.toLowerCase()); number += 1) title = `${wanted} ${number}`;
  return title;
};

const columnWords = (sheet: string, header: string): string => `the column “${header}” on ${sheet}`;
const lineWords = (sheet: string, label: string): string => `the line “${label}” on ${sheet}`;
const sheetWords = (title: string): string => `the sheet “${title}”`;

const besideForm = (table: Table, form: FormSite, snapshot: Snapshot): Site => {
  const used = sheetNamed(snapshot, form.sheet)?.columns ?? 0;
  return freshSite(table, form.sheet, form.header, form.fresh ? 5 : used + 1);
};

/** Where the sheets of a set stand, and where what a change makes of them will. */
export interface Layout {
  /** Sheets that are there, and those about to be made. */
  readonly sites: Record<string, Site>;
  readonly forms: Record<string, FormSite>;
  readonly newTitles: string[];
  /** True where a sheet of the set is there. */
  readonly begun: boolean;
}

const isAsked = (wish: TableWish = {}): boolean =>
  Object.values(wish).some((part: object | undefined) => Object.keys(part ?? {}).length > 0);

/** Keys of the columns that a wish puts something into. */
const keysPut = ({ add = [], set = [], cells = [] }: TableWish = {}): ReadonlySet<string> =>
  new Set(
    [
      ...[...add, ...set].flatMap((row) => Object.entries(row)),
      ...cells.map(({ key, value }) => [key, value]),
    ]
      .filter(([, value]) => inputOf(value) !== null)
      .map(([key]) => key as string),
  );

export const layOut = (
  set: SheetSet,
  snapshot: Snapshot,
  { make = new Set(), ...wishes }: SheetWishes,
): Layout => {
  const sites: Record<string, Site> = {};
  const forms: Record<string, FormSite> = {};
  const newTitles: string[] = [];
  const isWanted = (what: string): boolean => make === 'all' || make.has(what);
  const begun = set.sheets.some((entry) =>
    entry.kind === 'form' ? hasForm(entry.form, snapshot) : areaNamed(snapshot, entry.table.name),
  );
  const newSheet = (title: string): string => {
    const free = freeTitle(title, [...snapshot.sheets.map((sheet) => sheet.name), ...newTitles]);
    newTitles.push(free);
    return free;
  };
  for (const entry of set.sheets) {
    if (entry.kind === 'form') {
      const { form } = entry;
      const wish = wishes.forms?.[form.key];
      const there = locateForm(
        form,
        snapshot,
        (key, { name }) => isWanted(name) || wish?.[key] !== undefined,
      );
      if (!there && begun && !wish && !isWanted(form.key)) continue;
      forms[form.key] = there ?? freshForm(form, newSheet(form.title));
      continue;
    }
    const { table } = entry;
    const wish = wishes.tables?.[table.key];
    const put = keysPut(wish);
    const there = locateTable(table, snapshot, (key) => put.has(key) || isWanted(`${table.key}.${key}`));
    if (there) {
      sites[table.key] = there;
      continue;
    }
    const beside = table.beside === undefined ? undefined : forms[table.beside];
    if (begun && !isAsked(wish) && !isWanted(table.key) && !beside?.fresh) continue;
    sites[table.key] = beside
      ? besideForm(table, beside, snapshot)
      : freshSite(table, newSheet(table.title), headerRowOf(table), 0);
  }
  return { sites, forms, newTitles, begun };
};

/** What is made beside what was there, in words. */
export const madeWords = ({ sites, forms, newTitles, begun }: Layout): string[] => {
  if (!begun) return [];
  const columns = Object.values(sites).flatMap(({ table, sheet, missing, fresh }) =>
    fresh && newTitles.includes(sheet)
      ? []
      : missing.map((key) => columnWords(sheet, table.columns[key]!.header)),
  );
  const lines = Object.values(forms).flatMap(({ sheet, missing, fresh }) =>
    fresh ? [] : missing.map(({ label }) => lineWords(sheet, label)),
  );
  return [...newTitles.map(sheetWords), ...columns, ...lines];
};

/** What a set's sheets lack of what the program keeps on them, in words; nothing where none of them is there. */
export const lackingWords = (set: SheetSet, snapshot: Snapshot): string[] =>
  madeWords(layOut(set, snapshot, { measures: 'metric', make: 'all' }));

/** A free place above a table for a head whose cell was deleted: beside its label, else in a row with nothing in it. */
const lostHead = (site: Site, label: string, snapshot: Snapshot): Area => {
  const { sheet, header } = site;
  const at = (row: number, column: number) => cellAt(snapshot, sheet, row, column);
  const rows = Array.from({ length: header }, (_, row) => row).filter((row) => isEmpty(at(row, 1)));
  const row = rows.find((one) => labelOf(at(one, 0)) === label) ?? rows.find((one) => isEmpty(at(one, 0)));
  const beyond = (sheetNamed(snapshot, sheet)?.columns ?? 0) + 2;
  return { sheet, row: row ?? 0, column: row === undefined ? beyond : 1, rows: 1, columns: 1 };
};

/** Heads stand above their table, from the third row on; label to the left of the value. */
const headCells = (site: Site, snapshot: Snapshot): [string, Area][] =>
  (site.table.heads ?? []).map((head, index) => [
    head.name,
    site.fresh
      ? { sheet: site.sheet, row: 2 + index, column: 1, rows: 1, columns: 1 }
      : (areaNamed(snapshot, head.name) ?? lostHead(site, head.label, snapshot)),
  ]);

export const placesIn = (
  { sites, forms }: Layout,
  snapshot: Snapshot,
  added: Places['added'] = {},
): Places => ({
  sites,
  added,
  cells: Object.fromEntries([
    ...Object.values(forms).flatMap((form) => Object.entries(form.cells)),
    ...Object.values(sites).flatMap((site) => headCells(site, snapshot)),
  ]),
});
