import type { Litres, Metres } from '../../addin/core';
import {
  addAmounts,
  barrelVolume,
  countFor,
  doseFrom,
  fewestFills,
  filledWeight,
  findUnit,
  fillTime,
  fromCanonical,
  grams,
  leastWater,
  litres,
  litresPerMinute,
  massForPpm,
  meanFlow,
  metres,
  milligramsPerLitre,
  ofMass,
  ofVolume,
  productFor,
  seconds,
  toCanonical,
  waterMass,
} from '../../addin/core';

const [water, powder, flow, time] = [litres(1), grams(1), litresPerMinute(1), seconds(1)];
const minutes = 2;

/** Calls that must not compile: each would give a number in the wrong unit. */
export const forbidden = [
  // @ts-expect-error grams where litres belong
  () => waterMass(powder),
  // @ts-expect-error litres where grams belong
  () => filledWeight(water, water),
  // @ts-expect-error minutes where seconds belong
  () => doseFrom(minutes, flow),
  // @ts-expect-error a bare number where a step in seconds belongs
  () => countFor(water, flow, 1),
  // @ts-expect-error readings in minutes
  () => meanFlow(water, [minutes]),
  // @ts-expect-error flow and volume exchanged
  () => fillTime(flow, water),
  // @ts-expect-error litres where metres belong
  () => barrelVolume(water, metres(1)),
  // @ts-expect-error a mass where an amount, which says its kind, belongs
  () => addAmounts(ofMass(powder), powder),
  // @ts-expect-error a volume wrapped as a mass
  () => ofMass(water),
  // @ts-expect-error a time wrapped as a volume
  () => ofVolume(time),
  // @ts-expect-error a rate that is a bare number
  () => productFor(2, water),
  // @ts-expect-error ppm and litres exchanged
  () => massForPpm(water, 0.2, milligramsPerLitre(200)),
  // @ts-expect-error a powder's litres
  () => leastWater(water, 200),
  // @ts-expect-error a need in grams
  () => fewestFills(powder, water),
  // @ts-expect-error metres from a unit of flow
  (): Metres => toCanonical(2, findUnit('L/min', 'flow')!),
  // @ts-expect-error metres from a unit whose family nobody looked at
  (): Metres => toCanonical(2, findUnit('ft')!),
  // @ts-expect-error a mass told in a unit of volume
  () => fromCanonical(powder, findUnit('gal', 'volume')!),
  (): Litres => {
    // @ts-expect-error a sum of litres and grams is no volume
    return water + powder;
  },
];
