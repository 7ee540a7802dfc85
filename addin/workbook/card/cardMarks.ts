import { fingerprint, saidBy } from '../../core';
import type { Area } from '../change';
import type { Snapshot } from '../port';
import { cellAt, cellsOf } from '../snapshot';
import { headerArea, type Site } from '../tables/site';

/** Stands for a column of which a cell shows an error: a formula has no other mark of it. */
export const UNREADABLE = 'unreadable';

/** What the formulas of a card will find in an area. */
export const markOf = (snapshot: Snapshot, area: Area): string => {
  const cells = cellsOf(snapshot, area);
  return cells.some((line) => line.some(({ error }) => error !== undefined))
    ? UNREADABLE
    : fingerprint(cells.map((line) => line.map(({ value }) => saidBy(value))));
};

/** The same of the heads of a table, those included that the same change puts back. */
export const headMark = (snapshot: Snapshot, site: Site): string => {
  const { sheet, row, column, columns } = headerArea(site);
  const put = new Map(site.missing.map((key) => [site.columns[key], site.table.columns[key]!.header]));
  const said = Array.from(
    { length: columns },
    (_, index) => put.get(column + index) ?? saidBy(cellAt(snapshot, sheet, row, column + index).value),
  );
  return fingerprint([said]);
};
