import { findRateUnit } from '../../addin/core';
import { unitChoices } from '../../addin/workbook/fields/usualUnits';
import type { Garden, MixRow } from '../../addin/workbook/garden';
import { askChoice, askNumber, unitBeside, type Asked } from '../asked';
import { inId } from '../named';
import type { PaneState } from '../state';
import type { Block } from '../view';

const FEWEST_ROWS = 3;
const MOST_ROWS = 12;

/** One line of the mix as it stands in the pane. */
export interface MixLine {
  readonly product: Asked<string>;
  readonly rate: Asked<number>;
  readonly rateUnit: string;
  /** What the sheet's row is; undefined for a line that is new. */
  readonly known?: MixRow;
}

/** What is typed in a line belongs to its product; lines that are not on the sheet yet are counted. */
const lineKey = ({ mix }: Garden, index: number): string => {
  const known = mix[index];
  if (known === undefined) return String(index - mix.length + 1);
  const name = inId(known.product);
  const before = mix.slice(0, index).filter(({ product }) => inId(product) === name).length;
  return before === 0 ? name : `${name}.${before + 1}`;
};

const lineOf = (state: PaneState, garden: Garden, index: number): MixLine => {
  const known = garden.mix[index];
  const names = garden.products.map(({ name }) => name);
  // An empty mix begins with the first product that goes into a barrel; its rate is the user's to give.
  const first =
    index === 0 && garden.mix.length === 0 ? garden.products.find(({ form }) => form !== 'dry') : undefined;
  const [number, key] = [index + 1, lineKey(garden, index)];
  const product = askChoice(state, {
    section: 'mix',
    id: `mix.product.${key}`,
    label: `Product ${number}`,
    known: known?.product ?? first?.name ?? '',
    choices: [{ value: '', label: 'None' }, ...names],
  });
  const choices = unitChoices(garden.settings.measures, 'greatest');
  const greatest = garden.products.find(({ name }) => name === product.value)?.greatestRate;
  const rate = askNumber(state, {
    section: 'mix',
    id: `mix.rate.${key}`,
    label: `Rate of product ${number}`,
    known: known?.rate.value,
    unit: { known: known?.rate.unit ?? greatest?.unit ?? choices[0] ?? '', choices },
    range: { above: 0 },
    required: product.value !== '',
  });
  return { product, rate, rateUnit: unitBeside(rate), ...(known === undefined ? {} : { known }) };
};

/** The lines of the mix, three at least and always one to spare. */
export const askMixLines = (state: PaneState, garden: Garden): MixLine[] => {
  const lines: MixLine[] = [];
  for (let index = 0; index < MOST_ROWS; index += 1) {
    const line = lineOf(state, garden, index);
    lines.push(line);
    const enough = index + 1 >= Math.max(FEWEST_ROWS, garden.mix.length);
    if (enough && line.product.value === '') break;
  }
  return lines;
};

/** Lines that name a product and a rate, as rows of the mix. */
export const rowsOf = (lines: readonly MixLine[]): MixRow[] =>
  lines.flatMap(({ product, rate, rateUnit, known }, index) =>
    product.value === undefined ||
    product.value === '' ||
    rate.value === undefined ||
    findRateUnit(rateUnit) === undefined
      ? []
      : [{ row: known?.row ?? index, product: product.value, rate: { value: rate.value, unit: rateUnit } }],
  );

/** Why the mix cannot be kept as it stands; undefined where it can. */
export const mixFault = (lines: readonly MixLine[]): string | undefined => {
  const named = lines.map(({ product }) => product.value ?? '').filter((name) => name !== '');
  const twice = named.find((name, index) => named.indexOf(name) !== index);
  if (twice !== undefined) return `“${twice}” stands twice in the mix; use one rate a product.`;
  return lines.find(({ rate }) => rate.fault !== undefined)?.rate.fault;
};

export const mixBlocks = (lines: readonly MixLine[]): Block[] => [
  { kind: 'heading', text: 'Into the barrel' },
  { kind: 'fields', fields: lines.flatMap(({ product, rate }) => [product.field, rate.field]) },
];
