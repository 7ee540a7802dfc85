import { nameKey } from '../../addin/core';
import type { Garden, Product } from '../../addin/workbook/garden';
import { productsTable } from '../../addin/workbook/sheets/products';
import { askTableRow } from '../askFields';
import { askChoice } from '../asked';
import { firstOfEach, inId } from '../named';
import type { PaneState } from '../state';
import type { Block } from '../view';

const NEW = 'new';
const LEGENDS = ['What the label states', 'Measuring and money'];
/** Fields of one product, so that half-typed ones are not mixed up. */
export const productFieldPrefix = (picked: string): string => `product.${picked}.`;

export const askProduct = (state: PaneState, garden: Garden) => {
  const { products, settings } = garden;
  const picked = askChoice(state, {
    section: 'mix',
    id: 'product.pick',
    label: 'Product',
    known: NEW,
    choices: [
      { value: NEW, label: 'A new product' },
      ...firstOfEach(products, ({ name }) => name).map(({ name }) => ({ value: inId(name), label: name })),
    ],
  });
  const key = picked.value ?? NEW;
  const known = products.find(({ name }) => inId(name) === key);
  const prefix = productFieldPrefix(key);
  return {
    picked,
    prefix,
    known,
    asked: askTableRow<Omit<Product, 'row'>>(state, productsTable, known ?? {}, {
      section: 'mix',
      prefix,
      headings: ['', ...LEGENDS],
      settings,
    }),
  };
};

export type ProductAnswers = ReturnType<typeof askProduct>;

/** Why the product cannot be kept as it stands; undefined where it can. */
export const productFault = (garden: Garden, { asked, known }: ProductAnswers): string | undefined => {
  if (asked.fault !== undefined) return asked.fault.sentence;
  const name = nameKey(asked.row.name);
  if (name === '') return 'Name: nothing was given; use the name you call it by.';
  return garden.products.some((product) => product.row !== known?.row && nameKey(product.name) === name)
    ? `Name: “${asked.row.name}” is the name of another product; use a name of its own.`
    : undefined;
};

export const productBlocks = ({ picked, asked }: ProductAnswers, first: boolean): Block[] => [
  { kind: 'fields', fields: [...(first ? [] : [picked.field]), ...asked.under('')] },
  ...LEGENDS.map((legend): Block => ({
    kind: 'fields',
    legend,
    fields: asked.under(legend),
  })),
  { kind: 'actions', actions: [{ id: 'product.keep', label: 'Keep this product', primary: first }] },
];
