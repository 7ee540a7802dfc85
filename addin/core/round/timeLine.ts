import type { FillSize } from '../barrels/fills';
import { fillTime } from '../barrels/fills';
import { seconds } from '../measuring/quantity';
import type { Seconds } from '../measuring/quantity';
import type { Rig } from './round';
import type { StationNeed } from './stationNeeds';

/** When the parts of one fill begin and when it is pumped out, seconds after midnight. */
export interface FillTimes {
  readonly premixStart: Seconds;
  readonly fillStart: Seconds;
  readonly pumpStart: Seconds;
  readonly finish: Seconds;
}

/**
 * The clock of one station: for each fill first the premix, then the tap, then the pump, nothing at once.
 *
 * Filling is volume made up ÷ tap flow (the little that products bring is left to the tap). Pumping is volume
 * pumped out ÷ flow. The walk between plants comes on top in the share of the need that the fill delivers, unless
 * the wand stays open: then solution runs as people walk and the walk is within the pumping.
 *
 * @param premix measuring and dissolving for one fill, s, ≥ 0
 * @param start  seconds after midnight
 * @returns one entry a fill, in order, each beginning where the one before finished
 * @example 100 L at a tap of 20 L/min and a flow of 10 L/min: 5 min to fill, 10 min to pump
 */
export const timeLine = (
  fills: readonly FillSize[],
  here: StationNeed,
  rig: Rig,
  premix: Seconds,
  start: Seconds,
): readonly FillTimes[] => {
  const walking = rig.wandStaysOpen ? 0 : here.walking;
  let now: number = start;
  return fills.map(({ makeUp, pumpedOut }) => {
    const premixStart = seconds(now);
    const fillStart = seconds(premixStart + premix);
    const pumpStart = seconds(fillStart + fillTime(makeUp, rig.tapFlow));
    const finish = seconds(pumpStart + fillTime(pumpedOut, rig.flow) + walking * (pumpedOut / here.need));
    now = finish;
    return { premixStart, fillStart, pumpStart, finish };
  });
};
