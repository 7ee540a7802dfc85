import {
  findUnit,
  nameKey,
  seconds,
  toCanonical,
  type PlantGroup,
  type Refusal,
  type RoundInput,
  type SizeDose,
} from '../core';
import type { Garden, RoundOptions } from './garden';
import { roundMix } from './roundMix';
import { roundRig } from './roundRig';
import { walkOf } from './walk';

const MOST_NAMED = 5;

const named = (names: readonly string[]): string => {
  const shown = names.slice(0, MOST_NAMED).map((name) => `“${name}”`);
  const more = names.length - shown.length;
  return more > 0 ? `${shown.join(', ')} and ${more} more` : shown.join(', ');
};

/** Plants by bed and size class, in the order of the walk and, within a bed, of the Doses sheet. */
const groupsOf = ({ plants, beds, doses }: Garden): PlantGroup[] => {
  const inUse = plants.filter(({ howMany }) => howMany > 0);
  const totals = new Map<string, { sizeClass: string; plants: number }>();
  const classes = new Map(doses.map(({ sizeClass }) => [nameKey(sizeClass), sizeClass]));
  for (const { bed, sizeClass, howMany } of inUse) {
    const size = nameKey(sizeClass);
    if (!classes.has(size)) classes.set(size, sizeClass);
    const key = `${nameKey(bed)}\u0000${size}`;
    const before = totals.get(key);
    totals.set(key, { sizeClass: classes.get(size)!, plants: (before?.plants ?? 0) + howMany });
  }
  const walk = walkOf(
    beds,
    inUse.map(({ bed }) => bed),
  );
  return walk.flatMap(({ bed, station }) =>
    [...classes.keys()].flatMap((size): PlantGroup[] => {
      const total = totals.get(`${nameKey(bed)}\u0000${size}`);
      return total ? [{ bed, station, ...total }] : [];
    }),
  );
};

const dosesOf = ({ doses, doseUnit }: Garden): SizeDose[] => {
  const unit = findUnit(doseUnit, 'volume');
  return doses.flatMap(({ sizeClass, dose }) =>
    dose === undefined || unit === undefined ? [] : [{ sizeClass, dose: toCanonical(dose, unit) }],
  );
};

const withoutDose = (groups: readonly PlantGroup[], doses: readonly SizeDose[]): Refusal[] => {
  const dosed = new Set(doses.map(({ sizeClass }) => nameKey(sizeClass)));
  const missing = [...new Set(groups.map(({ sizeClass }) => sizeClass))].filter(
    (sizeClass) => !dosed.has(nameKey(sizeClass)),
  );
  return missing.length === 0
    ? []
    : [
        {
          refused: `Doses: none was given for ${named(missing)}; use one for each size that has plants.`,
          place: 'doses',
        },
      ];
};

/**
 * The garden in the planner's units, or everything that has to be mended first, each as a plain sentence. What is
 * blank and not needed is taken as none: heel, hose, times and weight 0, counts of whole seconds, a barrel filled to
 * the brim.
 *
 * @example roundInput(readGarden(snapshot), { start: 7 * 3600 }) // a RoundInput, or a list of refusals
 */
export const roundInput = (garden: Garden, options: RoundOptions): RoundInput | Refusal[] => {
  const unread = garden.problems
    .filter(({ place }) => !(options.leaveOutUnread && place === 'garden'))
    .map(({ sentence, place }): Refusal => ({ refused: sentence, place }));
  const groups = groupsOf(garden);
  const doses = dosesOf(garden);
  const rig = roundRig(garden);
  const { mix, refusals } = roundMix(garden);
  const none: Refusal[] =
    groups.length > 0
      ? []
      : [{ refused: 'There are no plants to feed: the Plants sheet lists none.', place: 'garden' }];
  if (Array.isArray(rig)) return [...unread, ...none, ...withoutDose(groups, doses), ...rig, ...refusals];
  const all = [...unread, ...none, ...withoutDose(groups, doses), ...refusals];
  if (all.length > 0) return all;
  return {
    groups,
    doses,
    rig,
    mix,
    style: options.style ?? garden.settings.fillStyle,
    start: seconds(options.start),
    measures: garden.settings.measures,
    ...(options.overLabelReason === undefined ? {} : { overLabelReason: options.overLabelReason }),
  };
};
