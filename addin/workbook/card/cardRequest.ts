import { findRateUnit } from '../../core';
import type { RoundPlan, System } from '../../core';
import type { Garden } from '../garden';
import type { MeasuringWay } from './cardFormulas';
import type { CardProduct, CardRequest } from './cardLayout';

/** What the user says of this one round. */
export interface CardOptions {
  /** The spreadsheet's serial day. */
  readonly date: number;
  /** Seconds after midnight. */
  readonly start: number;
  readonly style: 'full' | 'equal';
  readonly overLabelReason?: string;
}

const HOT_WATER_UNIT: Readonly<Record<System, string>> = { US: 'qt', metric: 'L', imperial: 'imp qt' };
const SECONDS_A_DAY = 86_400;
/** The measures that a product is told in follow the way its rate is written. */
const wayOf = (rateUnit: string): MeasuringWay => {
  const amount = findRateUnit(rateUnit)?.amount;
  if (!amount) throw new Error(`“${rateUnit}” is not a unit of rate.`);
  if (amount.family === 'mass') return amount.system === 'metric' ? 'metric mass' : 'US mass';
  return `${amount.system} volume`;
};

const productsOf = (garden: Garden): CardProduct[] =>
  garden.mix.map(({ product, rate }) => ({
    name: product,
    way: wayOf(rate.unit),
    powder: garden.products.some(({ name, form }) => name === product && form === 'powder'),
  }));

/** Size classes of the round, in the order of the Doses sheet. */
const sizeClassesOf = (garden: Garden, plan: RoundPlan): string[] => {
  const used = new Set(plan.counts.map(({ sizeClass }) => sizeClass));
  const ordered = garden.doses.map(({ sizeClass }) => sizeClass).filter((sizeClass) => used.has(sizeClass));
  return [...ordered, ...[...used].filter((sizeClass) => !ordered.includes(sizeClass))];
};

/** What the card is made for, out of the plan: its stations, beds, fills, classes and products. */
export const cardRequest = (
  sheet: string,
  garden: Garden,
  plan: RoundPlan,
  options: CardOptions,
): CardRequest => ({
  sheet,
  date: options.date,
  start: options.start / SECONDS_A_DAY,
  style: options.style,
  mixName: garden.mixName || garden.mix.map(({ product }) => product).join(' + ') || 'plain water',
  stations: plan.stations.map(({ station, beds, fills }) => ({ name: station, beds, fills: fills.length })),
  sizeClasses: sizeClassesOf(garden, plan),
  products: productsOf(garden),
  hotWaterUnit: HOT_WATER_UNIT[garden.settings.measures],
  cautions: plan.cautions.map(({ text }) => text),
  ...(options.overLabelReason ? { overLabelReason: options.overLabelReason } : {}),
});
