import { grams, litres, litresPerMinute, seconds } from '../measuring/quantity';
import type { System } from '../measuring/units';
import { flowInWords, numberInWords, secondsInWords, volumeInWords, weightInWords } from './inWords';
import type { Refusal, Rig } from './round';

type InWords = (value: number, system: System) => string;

const asVolume: InWords = (value, system) => volumeInWords(litres(value), system);
const asFlow: InWords = (value, system) => flowInWords(litresPerMinute(value), system);
const asWeight: InWords = (value, system) => weightInWords(grams(value), system);
const asTime: InWords = (value) => secondsInWords(seconds(value));
const asNumber: InWords = (value) => numberInWords(value);

/** A millilitre, L: less is no dose, and a barrel that delivers less is no barrel. */
export const LEAST_DOSE = litres(0.001);

interface Limit {
  readonly name: string;
  readonly least: number;
  readonly most: number;
  readonly inWords: InWords;
}

/**
 * The ends of a rig's numbers, L, L/min, s, g: what refuses them here, on the sheet and in the pane. Far outside any
 * garden; within them every result stays a number that can be shown.
 */
export const RIG_LIMITS = {
  barrel: { name: 'Barrel', least: 0.1, most: 100_000, inWords: asVolume },
  fillLine: { name: 'Fill line, as a share of the barrel', least: 0.01, most: 1, inWords: asNumber },
  heel: { name: 'Heel', least: 0, most: 100_000, inWords: asVolume },
  flow: { name: 'Flow at the wand', least: 0.01, most: 10_000, inWords: asFlow },
  tapFlow: { name: 'Flow of the tap', least: 0.01, most: 10_000, inWords: asFlow },
  hoseContent: { name: 'Content of the hose', least: 0, most: 10_000, inWords: asVolume },
  betweenPlants: { name: 'Time between plants', least: 0, most: 3_600, inWords: asTime },
  countStep: { name: 'Step of the counts', least: 0.1, most: 600, inWords: asTime },
  emptyWeight: { name: 'Weight of the empty barrel', least: 0, most: 10_000_000, inWords: asWeight },
  premixTime: { name: 'Time to measure and dissolve', least: 0, most: 86_400, inWords: asTime },
  moveTime: { name: 'Time to move the barrel', least: 0, most: 86_400, inWords: asTime },
} as const satisfies Readonly<Record<Exclude<keyof Rig, 'wandStaysOpen'>, Limit>>;

export type RigNumber = keyof typeof RIG_LIMITS;

/**
 * The first value of a rig that is out of its range; undefined for a rig that can be planned with.
 *
 * @example a flow of 0: 'Flow at the wand: 0 L/min was given; use 0.01 L/min to 10,000 L/min.'
 */
export const rigRefusal = (rig: Rig, system: System): Refusal | undefined => {
  for (const [key, { name, least, most, inWords }] of Object.entries<Limit>(RIG_LIMITS)) {
    const given = rig[key as RigNumber];
    if (given >= least && given <= most) continue;
    const allowed = `${inWords(least, system)} to ${inWords(most, system)}`;
    return { refused: `${name}: ${inWords(given, system)} was given; use ${allowed}.`, place: 'rig' };
  }
  const filled = litres(rig.barrel * rig.fillLine);
  if (filled - rig.heel >= LEAST_DOSE) return undefined;
  return {
    refused:
      `Heel: ${volumeInWords(rig.heel, system)} was given; use less than the ${volumeInWords(filled, system)} ` +
      'that the barrel holds at its fill line.',
    place: 'rig',
  };
};
