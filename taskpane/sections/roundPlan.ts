import { findUnit, litres } from '../../addin/core';
import type { Fill, Litres, RoundInput, RoundPlan } from '../../addin/core';
import type { Garden } from '../../addin/workbook/garden';
import { measureWords, mixedProducts, type MixedProduct } from '../measured';
import { inUnitWords, percentWords, plural, shortNumber } from '../quantityWords';
import { aboutTime, clockTime } from '../time';
import type { Block } from '../view';

/** Fills that differ by less than this share are spoken of as equal. */
const ALIKE = 0.005;

const alike = (one: number, other: number): boolean => Math.abs(one - other) <= ALIKE * Math.max(one, other);

const amountOf = (fill: Fill, { product }: MixedProduct) =>
  fill.products.find(({ name }) => name === product.name)?.amount;

/** How full each fill leaves the barrel: what is pumped out and the heel under it. */
const levelsOf = (fills: readonly Fill[], heel: Litres): Litres[] =>
  fills.map(({ pumpedOut }) => litres(pumpedOut + heel));

const fillsWords = (levels: readonly Litres[], unit: string): string => {
  const [first, last] = [levels[0], levels.at(-1)];
  if (first === undefined || last === undefined) return 'no fills';
  if (levels.every((level) => alike(level, first)))
    return `${plural(levels.length, 'fill')} of ${inUnitWords(first, unit)}`;
  const full = levels.slice(0, -1);
  if (full.every((level) => alike(level, first)))
    return `${plural(full.length, 'fill')} of ${inUnitWords(first, unit)} and one of ${inUnitWords(last, unit)}`;
  return `${plural(levels.length, 'fill')} of up to ${inUnitWords(Math.max(...levels), unit)}`;
};

/** The first product's measure, and whether every fill takes the same. */
const measureOfFirst = (fills: readonly Fill[], mixed: readonly MixedProduct[]): string => {
  const [product] = mixed;
  if (product === undefined) return '';
  const told = fills.map((fill) => {
    const amount = amountOf(fill, product);
    return amount === undefined ? '' : (measureWords(product, amount, fill.makeUp).split(',')[0] ?? '');
  });
  const more =
    mixed.length > 1 ? ` of ${product.product.name} and ${plural(mixed.length - 1, 'product')} more` : '';
  const each = told.every((words) => words === told[0]) ? 'each' : 'in the first';
  return `, ${told[0]}${more}${told.length > 1 ? ` ${each}` : ''}`;
};

/**
 * The round in one line.
 *
 * @example 4 fills of 60 gal, 3 3/4 cups each, about 1 h 35 min
 */
export const roundSentence = (garden: Garden, input: RoundInput, plan: RoundPlan): string => {
  const fills = plan.stations.flatMap((station) => station.fills);
  const unit = findUnit(garden.rig.barrel.unit)?.token ?? 'L';
  return `${fillsWords(levelsOf(fills, input.rig.heel), unit)}${measureOfFirst(fills, mixedProducts(input.mix, garden.mix))}, ${aboutTime(plan.totals.duration)}`;
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
      `${inUnitWords(given, garden.doseUnit)}${Math.abs(error) < ALIKE ? '' : ` (${error > 0 ? '+' : '−'}${percentWords(Math.abs(error))})`}`,
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
