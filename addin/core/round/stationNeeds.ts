import { doseFrom } from '../flow/counts';
import { litres, seconds } from '../measuring/quantity';
import type { Litres, Seconds } from '../measuring/quantity';
import { nameKey } from '../names';
import type { RoundInput } from './round';

/** What one stand of the barrel has to feed. */
export interface StationNeed {
  readonly station: string;
  /** Beds with plants, in walking order. */
  readonly beds: readonly string[];
  readonly plants: number;
  /** What must leave the wand, L. */
  readonly need: Litres;
  /** One way between plants for each plant, s. */
  readonly walking: Seconds;
}

interface Gathering {
  readonly station: string;
  readonly beds: Set<string>;
  plants: number;
  doses: number;
}

/**
 * What must leave the wand at each station, in the order the stations first appear.
 *
 * Need = Σ dose × plants + flow × time between plants, where the wand stays open, + the hose's own content once. The
 * hose counts at every station, as the heel does: barrel and hose are moved empty, so each stand fills the hose
 * anew and sizes its own fills. Doses are those asked for, not those the rounded counts give. A station without
 * plants is not visited.
 *
 * @param input checked by `refusalOf`
 * @example 10 plants of 4 L with 0.5 L in the hose: need 40.5 L
 */
export const stationNeeds = (input: RoundInput): readonly StationNeed[] => {
  const { flow, betweenPlants, hoseContent, wandStaysOpen } = input.rig;
  const doses = new Map(input.doses.map(({ sizeClass, dose }) => [sizeClass, dose]));
  const gathered = new Map<string, Gathering>();
  for (const { station, bed, sizeClass, plants } of input.groups) {
    if (plants === 0) continue;
    const key = nameKey(station);
    let here = gathered.get(key);
    if (here === undefined) gathered.set(key, (here = { station, beds: new Set(), plants: 0, doses: 0 }));
    here.beds.add(bed);
    here.plants += plants;
    here.doses += plants * doses.get(sizeClass)!;
  }
  const perWalk = wandStaysOpen ? doseFrom(betweenPlants, flow) : 0;
  return [...gathered.values()].map((here) => ({
    station: here.station,
    beds: [...here.beds],
    plants: here.plants,
    need: litres(here.doses + here.plants * perWalk + hoseContent),
    walking: seconds(here.plants * betweenPlants),
  }));
};
