import { fewestFills, workingVolume } from '../barrels/fills';
import { litres } from '../measuring/quantity';
import type { System } from '../measuring/units';
import { namesInWords, numberInWords, quoted, rateInWords, volumeInWords } from './inWords';
import { overLabel, passesRate } from './labelRate';
import { productRefusal } from './productRefusals';
import { LEAST_DOSE, rigRefusal } from './rigRefusals';
import type { Refusal, RoundInput } from './round';
import type { StationNeed } from './stationNeeds';

/** More fills than a round of a garden has. */
export const MOST_ROUND_FILLS = 500;
const MOST_PLANTS = 1_000_000;
const DAY = 86_400;

const gardenRefusal = ({ groups }: RoundInput): Refusal | undefined => {
  const odd = groups.find(
    ({ plants }) => !(Number.isInteger(plants) && plants >= 0 && plants <= MOST_PLANTS),
  );
  if (odd !== undefined) {
    const given = numberInWords(odd.plants);
    return {
      refused: `Plants in bed ${quoted(odd.bed)}: ${given} was given; use a whole number from 0 to 1,000,000.`,
      place: 'garden',
    };
  }
  if (groups.some(({ plants }) => plants > 0)) return undefined;
  return { refused: 'No plants to feed: 0 were given; use a garden with at least 1.', place: 'garden' };
};

const doseRefusal = (input: RoundInput, system: System): Refusal | undefined => {
  const inUse = new Set(input.groups.filter(({ plants }) => plants > 0).map(({ sizeClass }) => sizeClass));
  const doses = new Map<string, number>();
  for (const { sizeClass, dose } of input.doses) {
    if (!inUse.has(sizeClass)) continue;
    if (doses.has(sizeClass)) {
      return {
        refused: `Doses: size ${quoted(sizeClass)} was given twice; use one dose a size.`,
        place: 'doses',
      };
    }
    doses.set(sizeClass, dose);
  }
  const without = [...inUse].filter((sizeClass) => !doses.has(sizeClass));
  if (without.length > 0) {
    return {
      refused: `Doses: none was given for size ${namesInWords(without)}; use one for each size that has plants.`,
      place: 'doses',
    };
  }
  const { barrel, heel, fillLine } = input.rig;
  const working = workingVolume(barrel, heel, fillLine);
  for (const [sizeClass, dose] of doses) {
    if (dose >= LEAST_DOSE && dose <= working) continue;
    const allowed = `${volumeInWords(LEAST_DOSE, system)} to ${volumeInWords(working, system)}`;
    return {
      refused:
        `Dose of size ${quoted(sizeClass)}: ${volumeInWords(litres(dose), system)} was given; ` +
        `use ${allowed}, what one fill of the barrel delivers.`,
      place: 'doses',
    };
  }
  return undefined;
};

const labelRefusal = (input: RoundInput, system: System): Refusal | undefined => {
  const unlike = input.mix.find(
    ({ rate, greatestRate, density }) =>
      greatestRate !== undefined && passesRate(rate, greatestRate, density) === undefined,
  );
  if (unlike !== undefined) {
    return {
      refused:
        `Density of ${quoted(unlike.name)}: nothing was given, and one of its rate and its label's greatest rate is by ` +
        'volume, the other by mass; use the grams that one millilitre weighs, or two rates of one kind.',
      place: 'mix',
    };
  }
  const over = overLabel(input.mix)[0];
  if (over?.greatestRate === undefined || (input.overLabelReason ?? '').trim() !== '') return undefined;
  return {
    refused:
      `Rate of ${quoted(over.name)}: ${rateInWords(over.rate, system)} was given; use up to the label's greatest rate, ` +
      `${rateInWords(over.greatestRate, system)}. To plan above a label, write the reason: it goes on the card.`,
    place: 'mix',
  };
};

const clockRefusal = ({ start }: RoundInput): Refusal | undefined =>
  start >= 0 && start < DAY
    ? undefined
    : {
        refused: `Start on the clock: ${numberInWords(start)} s after midnight was given; use 0 to 86,399.`,
        place: 'round',
      };

/**
 * Why a round cannot be planned, the first reason found; undefined where it can.
 *
 * Garden, rig, doses, mix, clock, in this order. Every number that is missing, endless or out of its range is
 * refused here, so that no result of the plan is.
 */
export const refusalOf = (input: RoundInput): Refusal | undefined => {
  const system = input.measures ?? 'metric';
  return (
    gardenRefusal(input) ??
    rigRefusal(input.rig, system) ??
    doseRefusal(input, system) ??
    productRefusal(input.mix, system) ??
    labelRefusal(input, system) ??
    clockRefusal(input)
  );
};

/** Why a round of so many fills is not planned. */
export const fillsRefusal = (input: RoundInput, stations: readonly StationNeed[]): Refusal | undefined => {
  const { barrel, heel, fillLine } = input.rig;
  const working = workingVolume(barrel, heel, fillLine);
  const fills = stations.reduce((total, { need }) => total + fewestFills(need, working), 0);
  if (fills <= MOST_ROUND_FILLS) return undefined;
  return {
    refused:
      `Fills: this round takes ${numberInWords(fills)} with a barrel that delivers ` +
      `${volumeInWords(working, input.measures ?? 'metric')} a fill; use a barrel that needs ${MOST_ROUND_FILLS} or fewer.`,
    place: 'rig',
  };
};
