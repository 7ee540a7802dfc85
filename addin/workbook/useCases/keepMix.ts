import { nameKey, type System } from '../../core';
import type { Change } from '../change';
import type { MixRow, Product } from '../garden';
import type { Snapshot } from '../port';
import { mixTable } from '../sheets/mix';
import { productsTable } from '../sheets/products';
import { readTable } from '../tables/readTable';
import { rowCells, wholeRow } from '../tables/table';
import type { TableWish } from '../tables/writeTable';
import { gardenChange } from './gardenChange';

/** A product to keep; with its row it is written there, and may have another name. */
export type KeptProduct = Pick<Product, 'name' | 'form'> & Partial<Product>;
export type KeptMixRow = Omit<MixRow, 'row'>;

const productsWish = (products: readonly KeptProduct[]): TableWish => {
  const rows = products.map(({ row, ...product }) => ({ row, cells: wholeRow(productsTable, product) }));
  return {
    set: rows.filter(({ row }) => row === undefined).map(({ cells }) => cells),
    cells: rows.flatMap(({ row, cells }) =>
      row === undefined ? [] : Object.entries(cells).map(([key, value]) => ({ row, key, value })),
    ),
  };
};

/** Products of the sheet that the mix no longer has lose their rate and keep their row. */
const mixWish = (snapshot: Snapshot, name: string | undefined, rows: readonly KeptMixRow[]): TableWish => {
  const wanted = new Set(rows.map(({ product }) => nameKey(product)));
  const { rows: known } = readTable(mixTable, snapshot);
  const gone = known.filter(({ product, rate }) => rate !== undefined && !wanted.has(nameKey(product)));
  return {
    set: rows.map((row) => rowCells(mixTable, row)),
    cells: gone.map(({ row }) => ({ row, key: 'rate', value: undefined })),
    ...(name === undefined ? {} : { heads: { name } }),
  };
};

/** Writes products as their labels say; products that are not named stay. */
export const keepProducts = (
  snapshot: Snapshot,
  products: readonly KeptProduct[],
  measures: System,
): Change =>
  gardenChange(snapshot, {
    title: 'Keep the products',
    measures,
    tables: { products: productsWish(products) },
  });

/** Writes today's mix, and the products in it where they are given. */
export const keepMix = (
  snapshot: Snapshot,
  kept: {
    readonly name?: string;
    readonly mix: readonly KeptMixRow[];
    readonly products?: readonly KeptProduct[];
  },
  measures: System,
): Change =>
  gardenChange(snapshot, {
    title: 'Keep the mix',
    measures,
    tables: {
      mix: mixWish(snapshot, kept.name, kept.mix),
      products: productsWish(kept.products ?? []),
    },
  });
