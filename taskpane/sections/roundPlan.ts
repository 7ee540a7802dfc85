import { findUnit, fromCanonical, litres, roundedUp } from '../../addin/core';
import type { Fill, FillProduct, Litres, RoundInput, RoundPlan } from '../../addin/core';
import { unitChoices } from '../../addin/workbook/fields/usualUnits';
import type { Garden } from '../../addin/workbook/garden';
import { measureInWords } from '../measureWords';
import { inUnitWords, percentWords, plural, shortNumber } from '../quantityWords';
import { aboutTime, clockTime } from '../time';
import type { Block } from '../view';

/** Fills that differ by less than this share are spoken of as equal. */
const ALIKE = 0.005;

const alike = (one: number, other: number): boolean => Math.abs(one - other) <= ALIKE * Math.max(one, other);

/** How full each fill leaves the barrel: what is pumped out and the heel under it. */
const levelsOf = (fills: readonly Fill[], heel: Litres): Litres[] =>
  fills.map(({ pumpedOut }) => litres(pumpedOut + heel));

const fillsWords = (fills: readonly Fill[], levels: readonly Litres[], unit: string): string => {
  const [first, last] = [levels[0], levels.at(-1)];
  if (first === undefined || last === undefined) return 'no fills';
  if (fills.every(({ makeUp }) => alike(makeUp, fills[0]!.makeUp)))
    return `${plural(fills.length, 'fill')} of ${inUnitWords(fills[0]!.makeUp, unit)}`;
  if (levels.every((level) => alike(level, first)))
    return `${plural(levels.length, 'fill')} to ${inUnitWords(first, unit)}`;
  const full = levels.slice(0, -1);
  if (full.every((level) => alike(level, first)))
    return `${plural(full.length, 'fill')} to ${inUnitWords(first, unit)} and one to ${inUnitWords(last, unit)}`;
  return `${plural(levels.length, 'fill')} to at most ${inUnitWords(litres(Math.max(...levels)), unit)}`;
};

/** The one product's measure and whether every fill takes the same, or how many products there are. */
const measuresWords = (fills: readonly Fill[]): string => {
  const [product, ...others] = fills[0]?.products ?? [];
  if (product === undefined) return '';
  if (others.length > 0) return `, ${plural(others.length + 1, 'product')}`;
  if (product.measure.tooLittle) return `, ${product.name} too little to measure by itself`;
  const told = fills.map(({ products }) => products[0]!.measure.words);
  const each = told.every((words) => words === told[0]) ? 'each' : 'in the first';
  return `, ${told[0]} of ${product.name}${told.length > 1 ? ` ${each}` : ''}`;
};

/**
 * The round in one line.
 *
 * @example 4 fills to 60 gal, 3 3/4 cups of soluble powder 20-20-20 in the first, about 1 h 35 min
 */
export const roundSentence = (garden: Garden, input: RoundInput, plan: RoundPlan): string => {
  const fills = plan.stations.flatMap((station) => station.fills);
  const unit = findUnit(garden.rig.barrel.unit)?.token ?? 'L';
  const levels = levelsOf(fills, input.rig.heel);
  return `${fillsWords(fills, levels, unit)}${measuresWords(fills)}, ${aboutTime(plan.totals.duration)}`;
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

/** A least volume of hot water, as the card rounds it. */
export const hotWaterWords = (least: Litres, token: string): string =>
  `${roundedUp(fromCanonical(least, findUnit(token)!)).toLocaleString('en-US')} ${token}`;

/** Everything that goes into a fill; the product's name is left out where it is the only one. */
const intoFill = ({ products, premixWater }: Fill, hotWater?: string): string => {
  const named = ({ name }: FillProduct): string => (products.length > 1 ? `${name}: ` : '');
  const measures = products.map((one) => `${named(one)}${measureInWords(one.measure)}`);
  if (hotWater === undefined) return measures.join('\n');
  const water = premixWater === undefined ? 'not known' : hotWaterWords(premixWater, hotWater);
  return [...measures, `Hot water: ${water}`].join('\n');
};

export const fillsBlock = (garden: Garden, input: RoundInput, plan: RoundPlan): Block => {
  const unit = findUnit(garden.rig.barrel.unit)?.token ?? 'L';
  const mixed = input.mix;
  const moving = plan.stations.length > 1;
  const powders = input.mix.some(({ form }) => form === 'powder');
  const hotWater = powders ? unitChoices(garden.settings.measures, 'hotWater')[0] : undefined;
  const [only, ...others] = mixed;
  const measures = only !== undefined && others.length === 0 ? only.name : 'Measure';
  return {
    kind: 'table',
    table: {
      id: 'round.fills',
      caption: 'Fills',
      columns: [
        { label: moving ? 'Fill, station' : 'Fill' },
        { label: 'Make up', numeric: true },
        ...(mixed.length > 0 ? [{ label: measures }] : []),
        { label: 'From, to', numeric: true },
      ],
      rows: plan.stations.flatMap(({ station, fills }) =>
        fills.map((fill) => [
          moving ? `${fill.number}, ${station}` : String(fill.number),
          inUnitWords(fill.makeUp, unit),
          ...(mixed.length > 0 ? [intoFill(fill, hotWater)] : []),
          `${clockTime(fill.premixStart)}\n${clockTime(fill.finish)}`,
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
