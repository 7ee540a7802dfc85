import type { Garden, Measured, Product } from '../../addin/workbook/garden';
import { askChoice, askNumber, askText, unitBeside, type Asked } from '../asked';
import type { PaneState } from '../state';
import { unitChoices } from '../unitChoices';
import type { Block } from '../view';

const NEW = 'new';
const FORMS = [
  { value: 'powder', label: 'Powder' },
  { value: 'liquid', label: 'Liquid' },
  { value: 'dry', label: 'Spread dry' },
] as const;

/** Fields of one product: those of a known product are named by its row, so that half-typed ones are not mixed up. */
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
      ...products.map(({ row, name }) => ({ value: String(row), label: name })),
    ],
  });
  const key = picked.value ?? NEW;
  const known = products.find(({ row }) => String(row) === key);
  const prefix = productFieldPrefix(key);
  const number = (
    id: string,
    label: string,
    value: number | undefined,
    more: Partial<Parameters<typeof askNumber>[1]> = {},
  ) => askNumber(state, { section: 'mix', id: `${prefix}${id}`, label, known: value, ...more });
  const measured = (
    id: string,
    label: string,
    value: Measured | undefined,
    choices: readonly string[],
    help?: string,
  ) =>
    number(id, label, value?.value, {
      unit: { known: value?.unit ?? choices[0] ?? '', choices },
      above: true,
      help,
    });
  const percent = (id: 'N' | 'P2O5' | 'K2O' | 'Fe', label: string) =>
    number(id, label, known?.[id], { unit: '%', most: 100 });
  return {
    picked,
    prefix,
    known,
    name: askText(state, {
      section: 'mix',
      id: `${prefix}name`,
      label: 'Name',
      known: known?.name,
      allowed: 'the name you call it by',
    }),
    form: askChoice(state, {
      section: 'mix',
      id: `${prefix}form`,
      label: 'It is a',
      known: known?.form ?? 'powder',
      choices: FORMS,
    }),
    greatestRate: measured(
      'greatestRate',
      "Label's greatest rate",
      known?.greatestRate,
      unitChoices(settings.measures, 'greatest'),
      'The plan never goes above it.',
    ),
    N: percent('N', 'Nitrogen, N'),
    P2O5: percent('P2O5', 'Phosphate, P2O5'),
    K2O: percent('K2O', 'Potash, K2O'),
    Fe: percent('Fe', 'Iron, Fe'),
    solubility: number('solubility', 'Dissolves in your hot water', known?.solubility, {
      unit: 'g/L',
      above: true,
      help: 'From the label; it tells how much hot water the powder needs.',
    }),
    density: number('density', 'One millilitre weighs', known?.density, {
      unit: 'g',
      above: true,
      help: 'Weigh it as you measure it. Needed between spoons and weights, and for food per plant.',
    }),
    pack: measured('pack', 'A pack holds', known?.pack, unitChoices(settings.measures, 'pack')),
    price: number('price', 'A pack costs', known?.price, { unit: settings.currency }),
  };
};

export type ProductAnswers = ReturnType<typeof askProduct>;

const measuredOf = (asked: Asked<number>): Measured | undefined =>
  asked.value === undefined ? undefined : { value: asked.value, unit: unitBeside(asked) };

/** The product to keep, without its row. */
export const productToKeep = (asked: ProductAnswers): Omit<Product, 'row'> => {
  const entries = {
    density: asked.density.value,
    N: asked.N.value,
    P2O5: asked.P2O5.value,
    K2O: asked.K2O.value,
    Fe: asked.Fe.value,
    greatestRate: measuredOf(asked.greatestRate),
    solubility: asked.solubility.value,
    pack: measuredOf(asked.pack),
    price: asked.price.value,
  };
  const given = Object.fromEntries(Object.entries(entries).filter(([, value]) => value !== undefined));
  return { name: asked.name.value ?? '', form: (asked.form.value ?? 'powder') as Product['form'], ...given };
};

/** Why the product cannot be kept as it stands; undefined where it can. */
export const productFault = (garden: Garden, asked: ProductAnswers): string | undefined => {
  const name = asked.name.value?.toLowerCase();
  if (name === undefined) return 'Name: nothing was given; use the name you call it by.';
  if (
    garden.products.some((product) => product.row !== asked.known?.row && product.name.toLowerCase() === name)
  )
    return `Name: “${asked.name.value}” is the name of another product; use a name of its own.`;
  const numbers = [
    asked.greatestRate,
    asked.N,
    asked.P2O5,
    asked.K2O,
    asked.Fe,
    asked.solubility,
    asked.density,
    asked.pack,
    asked.price,
  ];
  return numbers.find(({ fault }) => fault !== undefined)?.fault;
};

export const productBlocks = (asked: ProductAnswers, first: boolean): Block[] => [
  {
    kind: 'fields',
    fields: [
      ...(first ? [] : [asked.picked.field]),
      asked.name.field,
      asked.form.field,
      asked.greatestRate.field,
    ],
  },
  {
    kind: 'fields',
    legend: 'What the label states',
    fields: [asked.N.field, asked.P2O5.field, asked.K2O.field, asked.Fe.field],
  },
  {
    kind: 'fields',
    legend: 'Measuring and money',
    fields: [
      asked.density.field,
      ...(asked.form.value === 'powder' ? [asked.solubility.field] : []),
      asked.pack.field,
      asked.price.field,
    ],
  },
  { kind: 'actions', actions: [{ id: 'product.keep', label: 'Keep this product', primary: first }] },
];
