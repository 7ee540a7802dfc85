import { expect } from 'vitest';
import {
  proposeAdoption,
  readList,
  type Inventory,
  type ListCell,
  type MergedArea,
  type Overrides,
  type Tally,
} from '../../../addin/core';

/** All groups of rows together. */
export const sumOf = ({ plants, titles, headers, blank, sections, totals, unread }: Tally): number =>
  plants + titles + headers + blank + sections + totals + unread;

/** Proposes and reads; every row of every list in these tests must be accounted for. */
export const adopt = (cells: ListCell[][], overrides: Overrides = {}, merges: MergedArea[] = []) => {
  const sheet = { cells, merges };
  const before = JSON.stringify(sheet);
  const proposal = proposeAdoption(sheet, overrides);
  const inventory = readList(sheet, proposal);
  expect(JSON.stringify(sheet), 'the list is not changed').toBe(before);
  expect(inventory.tally.rows).toBe(cells.length);
  expect(sumOf(inventory.tally), 'every row is in one group').toBe(cells.length);
  expect(inventory.unread).toHaveLength(inventory.tally.unread);
  const sources = inventory.plants.flatMap((plant) => plant.sourceRows);
  expect(new Set(sources).size, 'a row belongs to one plant').toBe(sources.length);
  expect(sources).toHaveLength(inventory.tally.plants);
  return { proposal, inventory };
};

/** Meanings of the columns by their index. */
export const meanings = (cells: ListCell[][], overrides: Overrides = {}) =>
  Object.fromEntries(
    adopt(cells, overrides).proposal.columns.map((column) => [column.index, column.meaning]),
  );

/** The plants in a line each: '3 Amber Kettle, Front, Hybrid tea, Large bush'. */
export const lines = ({ plants }: Inventory): readonly string[] =>
  plants.map(({ plant, bed, roseClass, sizeClass, count }) =>
    [`${count} ${plant}`, bed, roseClass, sizeClass].filter((part) => part !== '').join(', '),
  );

export const reasons = ({ unread }: Inventory): readonly string[] =>
  unread.map(({ row, reason }) => `row ${row + 1}: ${reason}`);

export const sentences = ({ problems }: Pick<Inventory, 'problems'>): readonly string[] =>
  problems.map(({ sentence }) => sentence);
