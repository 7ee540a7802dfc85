import type { Litres, LitresPerMinute, Seconds } from '../measuring/quantity';
import { litresPerMinute } from '../measuring/quantity';
import { studentT } from './studentT';

const SECONDS_PER_MINUTE = 60;
const CONFIDENCE = 0.95;
/** Three runs at least is published practice: NC State, WQWM-152. */
const FEWEST = 3;
const MOST = 200;
// Just below the t of endless readings, 1.959964: with fewer than this asks, no t is small enough.
const LEAST_T = 1.9599;

const sum = (readings: readonly number[]): number => readings.reduce((total, reading) => total + reading, 0);

/**
 * Flow at the wand from timed buckets of one volume.
 *
 * Definition: volume × readings ÷ their sum.
 *
 * @param volume   of the bucket, L, > 0
 * @param readings seconds to fill it, each > 0, one or more
 * @example meanFlow(litres(8), [seconds(24), seconds(24)]) // 20 L/min
 */
export const meanFlow = (volume: Litres, readings: readonly Seconds[]): LitresPerMinute =>
  litresPerMinute(((volume * readings.length) / sum(readings)) * SECONDS_PER_MINUTE);

/**
 * Spread of timed buckets.
 *
 * Definition: coefficient of variation, the sample standard deviation (n − 1) ÷ the mean.
 *
 * @param readings seconds, each > 0
 * @returns a share, such as 0.015; undefined for fewer than two readings
 * @example spread([seconds(24.1), seconds(24.6), seconds(23.9)]) // 0.0149
 */
export const spread = (readings: readonly Seconds[]): number | undefined => {
  const first = readings[0];
  if (first === undefined || readings.length < 2) return undefined;
  // Measured from the first reading and in shares of it: equal readings have a spread of exactly 0, and no square of
  // a small or large reading leaves what a number holds.
  const offsets = readings.map((reading) => (reading - first) / first);
  const middle = sum(offsets) / offsets.length;
  const squares = sum(offsets.map((offset) => (offset - middle) ** 2));
  return Math.sqrt(squares / (readings.length - 1)) / (1 + middle);
};

/**
 * How many timed buckets bring the mean flow within ± `share`, with 95 % confidence.
 *
 * The smallest n from 3 to 200 with t(0.975, n − 1) × spread ÷ √n ≤ share. Source: IUPAC Gold Book, C01247,
 * confidence limits of a mean.
 *
 * @param readings seconds, each > 0
 * @param share    wanted, > 0, such as 0.05
 * @returns undefined for fewer than two readings, and where 200 are not enough
 * @example repeatsNeeded([seconds(24.1), seconds(24.6), seconds(23.9)], 0.02) // 5
 */
export const repeatsNeeded = (readings: readonly Seconds[], share: number): number | undefined => {
  const variation = spread(readings);
  if (variation === undefined) return undefined;
  const fewest = Math.max(FEWEST, Math.ceil(((LEAST_T * variation) / share) ** 2));
  for (let n = fewest; n <= MOST; n++) {
    if ((studentT(CONFIDENCE, n - 1) * variation) / Math.sqrt(n) <= share) return n;
  }
  return undefined;
};
