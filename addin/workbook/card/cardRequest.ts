import {
  amountIn,
  findRateUnit,
  findUnit,
  finestMeasure,
  fromCanonical,
  nameKey,
  overLabel,
  weightUnitOf,
} from '../../core';
import type { Litres, RoundInput, RoundPlan, System } from '../../core';
import type { Area } from '../change';
import type { Garden } from '../garden';
import type { Snapshot } from '../port';
import { cellsOf } from '../snapshot';
import { columnArea, type Places } from '../tables/template';
import { plantedKey } from './cardContext';
import type { CardProduct, CardRequest } from './cardLayout';
import { headMark, markOf } from './cardMarks';
import { HEADED, PLANTED, WALK } from './cardSources';

/** What the user says of this one round. */
export interface CardOptions {
  /** The spreadsheet's serial day. */
  readonly date: number;
  /** Seconds after midnight. */
  readonly start: number;
  readonly style: 'full' | 'equal';
  readonly overLabelReason?: string;
  readonly leaveOutUnread?: boolean;
}

/** A planned round and what it was planned from. */
export interface PlannedRound {
  readonly input: RoundInput;
  readonly plan: RoundPlan;
}

const HOT_WATER_UNIT: Readonly<Record<System, string>> = { US: 'qt', metric: 'L', imperial: 'imp qt' };
const SECONDS_A_DAY = 86_400;

/** The smallest measure of the kind and system in which a rate is written. */
export const measuredIn = (rateUnit: string): string => {
  const amount = findRateUnit(rateUnit)?.amount;
  if (!amount) throw new Error(`“${rateUnit}” is not a unit of rate.`);
  return finestMeasure(amount).unit.token;
};

const productsOf = (garden: Garden, { input, plan }: PlannedRound): CardProduct[] =>
  input.mix.map((product, index) => {
    const { rate } = garden.mix.find((row) => nameKey(row.product) === nameKey(product.name))!;
    const unit = measuredIn(rate.unit);
    const { measured, cost } = plan.totals.products[index]!;
    return {
      name: product.name,
      unit,
      form: product.form,
      rate,
      labelKnown: product.greatestRate !== undefined,
      measured: amountIn(measured, findUnit(unit)!, product.density)!,
      ...(cost === undefined ? {} : { cost }),
    };
  });

/** Size classes of the round, in the order of the Doses sheet. */
const sizeClassesOf = (garden: Garden, plan: RoundPlan): string[] => {
  const used = new Set(plan.counts.map(({ sizeClass }) => sizeClass));
  const ordered = garden.doses.map(({ sizeClass }) => sizeClass).filter((sizeClass) => used.has(sizeClass));
  return [...ordered, ...[...used].filter((sizeClass) => !ordered.includes(sizeClass))];
};

// SUMIFS takes these in a name for others, and a space around a name as part of it.
const NOT_FOUND_BY_FORMULA = /^\s|\s$|[*?~]|^[<>=]/;
// SUMIFS takes such names for a date, a time, an amount or a truth, and finds no text: 10-12, 3/4, 5 May, true.
const MONTH = '(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*\\W*\\d*';
const READ_AS_VALUE = new RegExp(
  `^(?:true|false|(?!\\d+$)[-+(.$€£¥]*\\d[\\d\\s.,:/%()-]*(?:e[-+]?\\d+|[ap]m|${MONTH})?)$`,
  'i',
);

/** True where SUMIFS counts the plants as they were read. */
const formulasCount = (snapshot: Snapshot, bed: Area, sizeClass: Area): boolean =>
  [bed, sizeClass].every((area) =>
    cellsOf(snapshot, area).every(
      ([cell]) =>
        typeof cell?.value !== 'string' ||
        !(NOT_FOUND_BY_FORMULA.test(cell.value) || READ_AS_VALUE.test(cell.value)),
    ),
  );

const plantedOf = ({ groups }: RoundInput): Record<string, number> =>
  Object.fromEntries(groups.map(({ bed, sizeClass, plants }) => [plantedKey(bed, sizeClass), plants]));

/** Letters that stand on the title's line. */
const LONGEST_TITLE = 60;

/** What a mix without a name is called: by its products, where they fit. */
const unnamedMix = ({ mix }: Garden): string => {
  const names = mix.map(({ product }) => product).join(' + ') || 'plain water';
  return names.length <= LONGEST_TITLE ? names : `${mix.length} products`;
};

/** What the card is made for, out of the plan: its stations, beds, fills, classes and products. */
export const cardRequest = (
  sheet: string,
  snapshot: Snapshot,
  places: Places,
  garden: Garden,
  round: PlannedRound,
  options: CardOptions,
): CardRequest => {
  const { input, plan } = round;
  const { measures } = garden.settings;
  const plants = PLANTED.map((key) => columnArea(places, 'plants', key));
  const walk = WALK.map((key) => columnArea(places, 'beds', key));
  const leaveOutUnread = options.leaveOutUnread === true;
  const counted = !leaveOutUnread && formulasCount(snapshot, plants[0]!, plants[1]!);
  const over = overLabel(input.mix);
  const volume = (made: Litres): number => fromCanonical(made, findUnit(garden.rig.barrel.unit, 'volume')!);
  const { totals } = plan;
  return {
    sheet,
    date: options.date,
    start: options.start / SECONDS_A_DAY,
    style: options.style,
    unnamed: unnamedMix(garden),
    stations: plan.stations.map(({ station, beds, fills }) => ({
      name: station,
      beds,
      fills: fills.length,
    })),
    sizeClasses: sizeClassesOf(garden, plan),
    products: productsOf(garden, round),
    hotWaterUnit: HOT_WATER_UNIT[measures],
    weightUnit: weightUnitOf(measures),
    cautions: plan.cautions,
    overLabel: input.mix.flatMap((product, index) => (over.includes(product) ? [index] : [])),
    overLabelReason: over.length === 0 ? '' : (options.overLabelReason ?? '').trim(),
    leaveOutUnread,
    ...(counted ? {} : { planted: plantedOf(input) }),
    plantsMarks: plants.map((area) => markOf(snapshot, area)),
    walkMarks: walk.map((area) => markOf(snapshot, area)),
    headMarks: HEADED.map((table) => headMark(snapshot, places.sites[table]!)),
    made: {
      date: options.date,
      start: options.start / SECONDS_A_DAY,
      mix: garden.mixName || unnamedMix(garden),
      fills: totals.fills,
      plants: totals.plants,
      madeUp: volume(totals.madeUp),
      need: volume(totals.need),
      finish: totals.finish / SECONDS_A_DAY,
      unit: garden.rig.barrel.unit,
      ...(input.mix.length === 0 ? { cost: 0 } : totals.cost === undefined ? {} : { cost: totals.cost }),
    },
  };
};
