import { nameKey } from '../core';
import type { Bed } from './garden';

/** Station of beds that name none, from the start of the walk on. */
export const FIRST_STATION = 'A';

/** A bed of the walk with the station where the barrel stands for it. */
export interface WalkedBed {
  readonly bed: string;
  readonly station: string;
}

/**
 * Beds in the order in which they are fed: by their place in the walk, then those without one in the order of the
 * sheet, then beds that only the plant list names. A bed without a station has that of the bed before it.
 *
 * @param planted beds of the plant list, in its order
 * @example walkOf([{ row: 5, bed: 'East', walk: 2, station: '' }, { row: 6, bed: 'West', walk: 1, station: 'B' }], [])
 * // [{ bed: 'West', station: 'B' }, { bed: 'East', station: 'B' }]
 */
export const walkOf = (beds: readonly Bed[], planted: readonly string[]): WalkedBed[] => {
  const ordered = [...beds].sort((a, b) => (a.walk ?? Infinity) - (b.walk ?? Infinity) || a.row - b.row);
  const known = new Set(ordered.map(({ bed }) => nameKey(bed)));
  const others = planted.filter((bed) => {
    const isNew = !known.has(nameKey(bed));
    known.add(nameKey(bed));
    return isNew;
  });
  let station = FIRST_STATION;
  return [...ordered, ...others.map((bed) => ({ bed, station: '' }))].map(({ bed, station: own }) => {
    station = own === '' ? station : own;
    return { bed, station };
  });
};
