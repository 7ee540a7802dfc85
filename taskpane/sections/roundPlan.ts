import { findUnit } from '../../addin/core';
import type { Fill, RoundInput, RoundPlan } from '../../addin/core';
import type { Garden } from '../../addin/workbook/garden';
import { measureWords, mixedProducts, type MixedProduct } from '../measured';
import { inUnitWords, plural, shortNumber } from '../quantityWords';
import { aboutTime, clockTime } from '../time';
import type { Block } from '../view';

/** Fills that differ by less than this share are spoken of as equal. */
const ALIKE = 0.005;

const alike = (one: number, other: number): boolean => Math.abs(one - other) <= ALIKE * Math.max(one, other);

const amountOf = (fill: Fill, { product }: MixedProduct) =>
  fill.products.find(({ name }) => name === product.name)?.amount;

const fillsWords = (fills: readonly Fill[], unit: string): string => {
  const sizes = fills.map(({ makeUp }) => makeUp);
  const [first = 0, last = 0] = [sizes[0], sizes.at(-1)];
  const volume = (size: number) => inUnitWords(size, unit);
  if (sizes.every((size) => alike(size, first))) return `${plural(sizes.length, 'fill')} of ${volume(first)}`;
  const full = sizes.slice(0, -1);
  if (full.every((size) => alike(size, first)))
    return `${plural(full.length, 'fill')} of ${volume(first)} and one of ${volume(last)}`;
  return `${plural(sizes.length, 'fill')} of up to ${volume(Math.max(...sizes))}`;
};

const measureOfFirst = (fills: readonly Fill[], mixed: readonly MixedProduct[]): string => {
  const [fill, product] = [fills[0], mixed[0]];
  const amount = fill && product && amountOf(fill, product);
  if (fill === undefined || product === undefined || amount === undefined) return '';
  const words = measureWords(product, amount, fill.makeUp).split(',')[0] ?? '';
  const each = fills.every(({ makeUp }) => alike(makeUp, fill.makeUp)) ? 'each' : 'in the first';
  const more =
    mixed.length > 1 ? ` of ${product.product.name} and ${plural(mixed.length - 1, 'product')} more` : '';
  return `, ${words}${more} ${each}`;
};

/**
 * The round in one line.
 *
 * @example 4 fills of 60 gal, 3 3/4 cups each, about 1 h 35 min
 */
export const roundSentence = (garden: Garden, input: RoundInput, plan: RoundPlan): string => {
  const fills = plan.stations.flatMap((station) => station.fills);
  const unit = findUnit(garden.rig.barrel.unit)?.token ?? 'L';
  return `${fillsWords(fills, unit)}${measureOfFirst(fills, mixedProducts(input.mix, garden.mix))}, ${aboutTime(plan.totals.duration)}`;
};

export const countsBlock = (garden: Garden, { counts }: RoundPlan): Block => ({
  kind: 'table',
  table: {
    id: 'round.counts',
    caption: 'Counts',
    columns: [
      { label: 'Size' },
      { label: 'Plants', numeric: true },
      { label: 'Count', numeric: true },
      { label: 'Gives', numeric: true },
    ],
    rows: counts.map(({ sizeClass, plants, count, given, error }) => [
      sizeClass,
      plants.toLocaleString('en-US'),
      `${shortNumber(count)} s`,
      `${inUnitWords(given, garden.doseUnit)}${Math.abs(error) < ALIKE ? '' : ` (${error > 0 ? '+' : '−'}${shortNumber(Math.abs(error) * 100)} %)`}`,
    ]),
  },
});

export const fillsBlock = (garden: Garden, input: RoundInput, plan: RoundPlan): Block => {
  const unit = findUnit(garden.rig.barrel.unit)?.token ?? 'L';
  const mixed = mixedProducts(input.mix, garden.mix);
  const moving = plan.stations.length > 1;
  const hot = input.mix.some(({ form }) => form === 'powder');
  return {
    kind: 'table',
    table: {
      id: 'round.fills',
      caption: 'Fills',
      columns: [
        { label: 'Fill' },
        ...(moving ? [{ label: 'Station' }] : []),
        { label: 'Make up', numeric: true },
        ...mixed.map(({ product }) => ({ label: product.name })),
        ...(hot ? [{ label: 'Hot water', numeric: true }] : []),
        { label: 'Begin', numeric: true },
        { label: 'Done', numeric: true },
      ],
      rows: plan.stations.flatMap(({ station, fills }) =>
        fills.map((fill) => [
          String(fill.number),
          ...(moving ? [station] : []),
          inUnitWords(fill.makeUp, unit),
          ...mixed.map((one) => {
            const amount = amountOf(fill, one);
            return amount === undefined ? '' : measureWords(one, amount, fill.makeUp);
          }),
          ...(hot
            ? [fill.premixWater === undefined ? 'not known' : inUnitWords(fill.premixWater, unit)]
            : []),
          clockTime(fill.premixStart),
          clockTime(fill.finish),
        ]),
      ),
    },
  };
};

const NUTRIENTS = [
  ['N', 'N'],
  ['P2O5', 'P2O5'],
  ['K2O', 'K2O'],
  ['Fe', 'Fe'],
] as const;

export const foodBlock = ({ food }: RoundPlan): Block => {
  const told = NUTRIENTS.filter(([key]) => food.some((one) => one[key] !== undefined));
  if (told.length === 0) {
    const text =
      'Food for each plant is not known: write what the labels state, and what a millilitre weighs, under Mix, Products.';
    return { kind: 'text', text, tone: 'quiet' };
  }
  return {
    kind: 'table',
    table: {
      id: 'round.food',
      caption: 'Food for each plant, mg',
      columns: [{ label: 'Size' }, ...told.map(([, label]) => ({ label, numeric: true }))],
      rows: food.map((one) => [
        one.sizeClass,
        ...told.map(([key]) => {
          const mg = one[key];
          return mg === undefined ? 'not known' : shortNumber(mg);
        }),
      ]),
    },
  };
};

/** Cost, water and hours of the whole round. */
export const totalsBlock = (garden: Garden, { totals }: RoundPlan): Block => {
  const unit = findUnit(garden.rig.barrel.unit)?.token ?? 'L';
  const cost =
    totals.cost === undefined
      ? 'not known: write packs and prices under Mix, Products'
      : `${garden.settings.currency}${totals.cost.toFixed(2)}`;
  return {
    kind: 'table',
    table: {
      id: 'round.totals',
      caption: 'The whole round',
      columns: [{ label: 'What' }, { label: 'How much' }],
      rows: [
        ['Plants', totals.plants.toLocaleString('en-US')],
        ['Made up', inUnitWords(totals.madeUp, unit)],
        ['Pumping', aboutTime(totals.pumping)],
        ['Done by', clockTime(totals.finish)],
        ['Products cost', cost],
      ],
    },
  };
};
