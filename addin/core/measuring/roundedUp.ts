/** Parts of a quart or litre that a bucket's marks tell. */
export const WATER_PARTS = 4;
// Exact quarters come out of a conversion with noise.
const NOISE = 1e-9;

/**
 * Hot water to pour: never less than it takes, up to the next quarter.
 *
 * Source: a choice of ours; nothing published.
 *
 * @param least in any unit of volume, ≥ 0
 * @example roundedUp(3.01) // 3.25
 */
export const roundedUp = (least: number): number => Math.ceil(least * WATER_PARTS - NOISE) / WATER_PARTS;
