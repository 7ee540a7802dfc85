import type { Litres, LitresPerMinute, Seconds } from '../measuring/quantity';
import { litres, seconds } from '../measuring/quantity';

/** More fills than one plan lists; nobody pumps so many barrels in a round. */
export const MOST_FILLS = 10_000;

// A need this near to a whole number of fills is one: units and sums of doses leave noise far below it.
const NOISE = 1e-9;
const SECONDS_PER_MINUTE = 60;

/** One filling of the barrel. */
export interface FillSize {
  /** 1, 2, 3 … */
  readonly number: number;
  /** Water and products made up, L; the first fill makes up the heel too. */
  readonly makeUp: Litres;
  /** What the pump delivers, L. */
  readonly pumpedOut: Litres;
}

/**
 * What one fill of the barrel delivers.
 *
 * Definition: barrel × fill line − heel.
 *
 * @param barrel   brim volume, L, > 0
 * @param heel     liquid the pump cannot lift, L, ≥ 0
 * @param fillLine share of the barrel that is filled, above 0, to 1
 * @returns L; 0 or below where the heel is as much as the filled barrel, so that no fill delivers anything
 * @example workingVolume(litres(200), litres(10), 0.9) // 170 L
 */
export const workingVolume = (barrel: Litres, heel: Litres, fillLine: number): Litres =>
  litres(barrel * fillLine - heel);

/**
 * Fewest fillings of a barrel that deliver a need.
 *
 * Definition: need ÷ working volume, rounded up. The pump leaves the heel behind, so every fill delivers that much;
 * the heel is made up once, with the first. A need above a whole number of fills by less than one part in 10⁹ takes
 * no extra fill.
 *
 * @param need    solution that must leave the wand, L, ≥ 0
 * @param working barrel × fill line − heel, L, > 0
 * @returns whole fills; 0 for no need
 * @throws RangeError where the working volume is not above 0
 * @example fewestFills(litres(908.5), litres(227.125)) // 4
 */
export const fewestFills = (need: Litres, working: Litres): number => {
  if (!(working > 0)) throw new RangeError('A barrel whose heel reaches its fill line delivers nothing.');
  const ratio = need / working;
  const whole = Math.round(ratio);
  return Math.abs(ratio - whole) <= NOISE * whole ? whole : Math.ceil(ratio);
};

/**
 * Size of each fill, in the order they are pumped.
 *
 * Definition: Σ pumpedOut = need and Σ makeUp = need + heel; the last fill takes what remains. 'full': full barrels
 * and a short last one; 'equal': every fill delivers the same. No need, no fills.
 *
 * @param need     solution that must leave the wand, L, ≥ 0
 * @param barrel   brim volume, L, > 0
 * @param heel     liquid the pump cannot lift, L, ≥ 0 and below barrel × fill line
 * @param fillLine share of the barrel that is filled, above 0, to 1
 * @throws RangeError where the heel reaches the fill line, or for more than `MOST_FILLS` fills
 * @example fillPlan(litres(500), litres(200), litres(10), 1, 'full').map((fill) => fill.makeUp) // [200, 190, 120]
 */
export const fillPlan = (
  need: Litres,
  barrel: Litres,
  heel: Litres,
  fillLine: number,
  style: 'full' | 'equal',
): FillSize[] => {
  const working = workingVolume(barrel, heel, fillLine);
  const count = fewestFills(need, working);
  if (!(count <= MOST_FILLS)) throw new RangeError(`More than ${MOST_FILLS} fills.`);
  const each = style === 'full' ? working : need / count;
  const first = style === 'full' ? barrel * fillLine : each + heel;
  const fills: FillSize[] = [];
  let pumped = 0;
  let madeUp = 0;
  for (let number = 1; number <= count; number++) {
    const last = number === count;
    const pumpedOut = last ? need - pumped : each;
    const makeUp = last ? need + heel - madeUp : number === 1 ? first : each;
    fills.push({ number, makeUp: litres(makeUp), pumpedOut: litres(pumpedOut) });
    pumped += pumpedOut;
    madeUp += makeUp;
  }
  return fills;
};

/**
 * Time that a flow takes for a volume.
 *
 * Definition: volume ÷ flow.
 *
 * @param volume L, ≥ 0
 * @param flow   L/min, > 0
 * @example fillTime(litres(200), litresPerMinute(25)) // 480 s
 */
export const fillTime = (volume: Litres, flow: LitresPerMinute): Seconds =>
  seconds((volume / flow) * SECONDS_PER_MINUTE);
