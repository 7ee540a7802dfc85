import type { System } from '../../core';
import type { Area, Edit } from '../change';
import { WorkbookError, type Snapshot } from '../port';
import { areaNamed, cellAt, isEmpty, labelOf, sheetNamed } from '../snapshot';
import { editsOf, emptyDraft } from './edits';
import { unitName, type Form } from './form';
import { freshForm, locateForm, type FormSite } from './formSite';
import { freshSite, locateTable, type Site } from './site';
import type { Table } from './table';
import type { Places } from './template';
import { writeForm, type FormWish } from './writeForm';
import { headerRowOf, planTable, writeTable, type TableWish } from './writeTable';

/** Sheets that belong together: their formulas may refer to each other. */
export interface SheetSet {
  /** In the order in which the sheets are made. */
  readonly sheets: readonly (
    { readonly kind: 'table'; readonly table: Table } | { readonly kind: 'form'; readonly form: Form }
  )[];
}

export interface BuiltSheets {
  readonly edits: readonly Edit[];
  /** Where everything stands once the edits are applied. */
  readonly places: Places;
}

export interface SheetWishes {
  /** What new sheets start with. */
  readonly measures: System;
  readonly tables?: Readonly<Record<string, TableWish>>;
  readonly forms?: Readonly<Record<string, FormWish>>;
}

/** A title that no sheet has yet: "Plants", or "Plants 2" where the user has a sheet of that name. */
export const freeTitle = (wanted: string, taken: readonly string[]): string => {
  const known = new Set(taken.map((title) => title.toLowerCase()));
  let title = wanted;
  for (let number = 2; known.has(title.toLowerCase()); number += 1) title = `${wanted} ${number}`;
  return title;
};

const refuseTakenNames = (names: readonly string[], title: string, snapshot: Snapshot): void => {
  const taken = names.find((name) => areaNamed(snapshot, name) !== undefined);
  if (taken)
    throw new WorkbookError(
      `The workbook has a name “${taken}” already, which the sheet “${title}” needs. Rename or delete it in the list of names, then try again.`,
    );
};

const namesOf = (form: Form): string[] =>
  Object.values(form.lines).flatMap((line) => [line.name, ...[unitName(line) ?? []].flat()]);

const besideForm = (table: Table, form: FormSite, snapshot: Snapshot): Site => {
  const used = sheetNamed(snapshot, form.sheet)?.columns ?? 0;
  return freshSite(table, form.sheet, form.header, form.fresh ? 5 : used + 1);
};

interface Layout {
  readonly sites: Record<string, Site>;
  readonly forms: Record<string, FormSite>;
  readonly newTitles: string[];
}

const layOut = (set: SheetSet, snapshot: Snapshot): Layout => {
  const sites: Record<string, Site> = {};
  const forms: Record<string, FormSite> = {};
  const newTitles: string[] = [];
  const newSheet = (title: string): string => {
    const free = freeTitle(title, [...snapshot.sheets.map((sheet) => sheet.name), ...newTitles]);
    newTitles.push(free);
    return free;
  };
  for (const entry of set.sheets) {
    if (entry.kind === 'form') {
      const { form } = entry;
      const there = locateForm(form, snapshot);
      if (!there) refuseTakenNames(namesOf(form), form.title, snapshot);
      forms[form.key] = there ?? freshForm(form, newSheet(form.title));
      continue;
    }
    const { table } = entry;
    const there = locateTable(table, snapshot);
    if (there) {
      sites[table.key] = there;
      continue;
    }
    refuseTakenNames(
      (table.heads ?? []).map((head) => head.name),
      table.title,
      snapshot,
    );
    const beside = table.beside === undefined ? undefined : forms[table.beside];
    sites[table.key] = beside
      ? besideForm(table, beside, snapshot)
      : freshSite(table, newSheet(table.title), headerRowOf(table), 0);
  }
  return { sites, forms, newTitles };
};

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

/**
 * Edits that make the sheets that are missing, mend those that are there, and do what an action wants. What the user
 * put on the sheets stays: columns, the order of rows and columns, and every entry that the action is not about; no
 * row is ever deleted. Doing the same twice changes nothing the second time.
 *
 * @param snapshot with everything on the sheets that hold a table or form of the set
 * @throws WorkbookError where the workbook has a name of its own that a new sheet needs
 */
export const placeSheets = (set: SheetSet, snapshot: Snapshot, wishes: SheetWishes): BuiltSheets => {
  const { sites, forms, newTitles } = layOut(set, snapshot);
  const plans = Object.fromEntries(
    Object.entries(sites).map(([key, site]) => [key, planTable(site, snapshot, wishes.tables?.[key])]),
  );
  const places: Places = {
    sites,
    added: Object.fromEntries(Object.entries(plans).map(([key, plan]) => [key, plan.added.length])),
    cells: Object.fromEntries([
      ...Object.values(forms).flatMap((form) => Object.entries(form.cells)),
      ...Object.values(sites).flatMap((site) => headCells(site, snapshot)),
    ]),
  };
  const draft = emptyDraft();
  for (const sheet of newTitles) draft.sheets.push({ kind: 'addSheet', sheet });
  for (const [key, site] of Object.entries(sites))
    writeTable(site, snapshot, places, wishes.tables?.[key] ?? {}, plans[key]!, draft);
  for (const [key, site] of Object.entries(forms))
    writeForm(site, snapshot, places, wishes.forms?.[key] ?? {}, wishes.measures, draft);
  return { edits: editsOf(draft), places };
};

/** The edits alone, for sets that nothing else is built on in the same change. */
export const buildSheets = (set: SheetSet, snapshot: Snapshot, wishes: SheetWishes): readonly Edit[] =>
  placeSheets(set, snapshot, wishes).edits;

/** Where a set's formulas find things on the sheets as they stand; undefined where a sheet is missing. */
export const placesOf = (set: SheetSet, snapshot: Snapshot): Places | undefined => {
  const sites: Record<string, Site> = {};
  const cells: Record<string, Area> = {};
  for (const entry of set.sheets) {
    if (entry.kind === 'form') {
      const site = locateForm(entry.form, snapshot);
      if (!site || site.missing.length > 0) return undefined;
      Object.assign(cells, site.cells);
    } else {
      const site = locateTable(entry.table, snapshot);
      if (!site || site.missing.length > 0) return undefined;
      sites[entry.table.key] = site;
      Object.assign(cells, Object.fromEntries(headCells(site, snapshot)));
    }
  }
  return { sites, added: {}, cells };
};
