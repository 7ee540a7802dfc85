import { fillPlan, fillTime } from '../barrels/fills';
import { filledWeight } from '../barrels/weight';
import { addAmounts } from '../measuring/amounts';
import { grams, litres, seconds } from '../measuring/quantity';
import type { Amount, Seconds } from '../measuring/quantity';
import { cautionsFor } from './cautions';
import { foodPerPlant } from './food';
import { premixWater, priceOf, productsFor } from './mix';
import { fillsRefusal, refusalOf } from './refusals';
import type {
  Count,
  Fill,
  MixProduct,
  ProductTotal,
  Refusal,
  RoundInput,
  RoundPlan,
  StationPlan,
} from './round';
import { sizeCounts } from './sizeCounts';
import type { StationNeed } from './stationNeeds';
import { stationNeeds } from './stationNeeds';
import { timeLine } from './timeLine';

const planStation = (
  input: RoundInput,
  here: StationNeed,
  fillsBefore: number,
  start: Seconds,
): StationPlan => {
  const { rig, mix, style } = input;
  const sizes = fillPlan(here.need, rig.barrel, rig.heel, rig.fillLine, style);
  const times = timeLine(sizes, here, rig, mix.length === 0 ? seconds(0) : rig.premixTime, start);
  const fills = sizes.map(({ makeUp, pumpedOut }, place): Fill => {
    const water = premixWater(mix, makeUp);
    return {
      number: fillsBefore + place + 1,
      makeUp,
      pumpedOut,
      products: productsFor(mix, makeUp),
      ...(water === undefined ? {} : { premixWater: water }),
      weight: filledWeight(litres(pumpedOut + rig.heel), rig.emptyWeight),
      ...times[place]!,
    };
  });
  const { station, beds, plants, need } = here;
  return { station, beds, plants, need, fills, leftOver: rig.heel };
};

const planStations = (input: RoundInput, needs: readonly StationNeed[]): readonly StationPlan[] => {
  const stations: StationPlan[] = [];
  let [fills, now] = [0, input.start];
  for (const here of needs) {
    const station = planStation(input, here, fills, now);
    stations.push(station);
    fills += station.fills.length;
    now = seconds(station.fills.at(-1)!.finish + input.rig.moveTime);
  }
  return stations;
};

const sumOf = <T>(items: readonly T[], of: (item: T) => number): number =>
  items.reduce((total, item) => total + of(item), 0);

const productTotals = (mix: readonly MixProduct[], fills: readonly Fill[]): readonly ProductTotal[] =>
  mix.map((product, place) => {
    const sum = (of: 'amount' | 'measured'): Amount =>
      fills.map(({ products }) => products[place]![of]).reduce(addAmounts);
    const measured = sum('measured');
    const cost = priceOf(product, measured);
    return { name: product.name, amount: sum('amount'), measured, ...(cost === undefined ? {} : { cost }) };
  });

/** Undefined where a price is not known, and for plain water. */
const costOf = (products: readonly ProductTotal[]): number | undefined =>
  products.length > 0 && products.every(({ cost }) => cost !== undefined)
    ? sumOf(products, ({ cost }) => cost!)
    : undefined;

const totalsOf = (
  input: RoundInput,
  counts: readonly Count[],
  needs: readonly StationNeed[],
  stations: readonly StationPlan[],
): RoundPlan['totals'] => {
  const fills = stations.flatMap((station) => station.fills);
  const need = litres(sumOf(stations, (station) => station.need));
  const madeUp = litres(sumOf(fills, ({ makeUp }) => makeUp));
  const products = productTotals(input.mix, fills);
  const cost = costOf(products);
  const finish = fills.at(-1)!.finish;
  return {
    plants: sumOf(stations, ({ plants }) => plants),
    fills: fills.length,
    need,
    madeUp,
    given: litres(sumOf(counts, ({ plants, given }) => plants * given)),
    pumping: fillTime(need, input.rig.flow),
    walking: seconds(sumOf(needs, ({ walking }) => walking)),
    products,
    ...(cost === undefined ? {} : { cost }),
    duration: seconds(finish - input.start),
    finish,
  };
};

/**
 * One feeding of the garden: counts for each size class, and for each station its fills with what goes into them,
 * on the clock; totals, food, cost and cautions.
 *
 * Stations are visited in the order they first appear, the barrel moved empty between them, so each is sized by
 * itself: Σ pumped out = its need, Σ made up = its need + the heel, and each product's amounts add up to its rate ×
 * what is made up. A mix without products plans a round of plain water (no premix time, no cost). Time and memory
 * grow in proportion to groups and fills.
 *
 * Source: definitions in `fillPlan`, `countFor`, `productFor`, `leastWater`, `stationNeeds`, `timeLine`.
 *
 * @param input L, g, s and L/min; ranges as in `RoundInput`, checked here
 * @returns a refusal, a plain sentence, for a garden without plants, a size without a dose, a dose above what one
 *   fill delivers, a rig or product out of range, a rate above its label's greatest without a reason, or more than
 *   500 fills
 * @example 50 plants of 4 L, barrel of 100 L, heel 2 L: needs 200 L, fills of 100, 98 and 4 L made up
 */
export const planRound = (input: RoundInput): RoundPlan | Refusal => {
  const refusal = refusalOf(input);
  if (refusal !== undefined) return refusal;
  const needs = stationNeeds(input);
  const tooMany = fillsRefusal(input, needs);
  if (tooMany !== undefined) return tooMany;
  const counts = sizeCounts(input);
  const stations = planStations(input, needs);
  const heaviest = Math.max(...stations.flatMap(({ fills }) => fills.map(({ weight }) => weight)));
  return {
    counts,
    stations,
    totals: totalsOf(input, counts, needs, stations),
    food: foodPerPlant(input.mix, counts),
    cautions: cautionsFor(input, counts, grams(heaviest)),
  };
};
