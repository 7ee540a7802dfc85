import { cellAddress, columnLetters, fixedReference } from '../address';
import type { Area } from '../change';
import { reachOf, type Site } from './site';

/** Where everything stands that a formula of ours may refer to. */
export interface Places {
  readonly sites: Readonly<Record<string, Site>>;
  /** Rows about to be added, by table. */
  readonly added: Readonly<Record<string, number>>;
  /** Single cells by workbook name. */
  readonly cells: Readonly<Record<string, Area>>;
}

const siteOf = (places: Places, table: string): Site => {
  const site = places.sites[table];
  if (!site) throw new Error(`No place is known for the table “${table}”.`);
  return site;
};

/**
 * A column of a table: from its header down to where formulas look, so that a row put in right below the header is
 * not missed; or without the header where text would be an error.
 */
export const columnArea = (
  places: Places,
  table: string,
  key: string,
  part: 'whole' | 'body' = 'body',
): Area => {
  const site = siteOf(places, table);
  const column = site.columns[key];
  if (column === undefined) throw new Error(`The table “${table}” has no column “${key}”.`);
  const reach = reachOf(site, places.added[table]);
  return part === 'whole'
    ? { sheet: site.sheet, row: site.header, column, rows: reach + 1, columns: 1 }
    : { sheet: site.sheet, row: site.header + 1, column, rows: reach, columns: 1 };
};

const cellReference = (places: Places, name: string): string => {
  const area = places.cells[name];
  if (!area) throw new Error(`No cell is known under the name “${name}”.`);
  return fixedReference(area);
};

/** What a template refers to: "key" or "Rig_flow", and "table.key". */
export const tokensIn = (template: string): string[] =>
  [...template.matchAll(/\{([\w.]+)!?\}/g)].map(([, token]) => token!);

/** True where all that a template refers to is there, or about to be. */
export const canFill = (template: string, { sites, cells }: Places, own?: Site): boolean =>
  tokensIn(template).every((token) => {
    const [table = '', key] = token.split('.');
    return key === undefined
      ? own?.columns[token] !== undefined || cells[token] !== undefined
      : sites[table]?.columns[key] !== undefined;
  });

/**
 * Fills a formula's template in. `{key}` is the cell of the table's own column in the same row, `{table.key}` a
 * column of a table with its header, `{table.key!}` the same without, `{Rig_flow}` a named cell. References are
 * written out, not names: they follow every change of the sheets in every host, and names in formulas do not.
 *
 * @returns the formula of a row
 */
export const fillTemplate = (template: string, places: Places, own?: Site): ((row: number) => string) => {
  const parts = template.split(/(\{[\w.]+!?\})/).map((part): string | ((row: number) => string) => {
    const found = /^\{([\w.]+)(!?)\}$/.exec(part);
    if (!found) return part;
    const [, token = '', body = ''] = found;
    const column = own?.columns[token];
    if (column !== undefined) return (row) => `$${columnLetters(column)}${row + 1}`;
    const [table, key] = token.split('.');
    return table !== undefined && key !== undefined
      ? fixedReference(columnArea(places, table, key, body ? 'body' : 'whole'))
      : cellReference(places, token);
  });
  return (row) => parts.map((part) => (typeof part === 'string' ? part : part(row))).join('');
};

/** "Plants, row 12, How many", for sentences. */
export const whereWords = (sheet: string, row: number, header: string): string =>
  `${sheet}, row ${row + 1}, ${header}`;

export const cellWords = (sheet: string, row: number, column: number): string =>
  `${sheet}, cell ${cellAddress(row, column)}`;
