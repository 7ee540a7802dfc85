import type { Inventory, System } from '../../core';
import type { Change } from '../change';
import type { Snapshot } from '../port';
import { asChange, gardenEdits, type GardenWish } from './gardenChange';

export interface Adopted {
  readonly change: Change;
  /** Lines put on the Plants sheet. */
  readonly added: number;
  /** Lines that the Plants sheet had already; they stay as they are. */
  readonly already: number;
}

/**
 * Puts the plants of an adopted list on the Plants sheet, their beds on Beds in the order of the list, and their size
 * classes on Doses. The list itself is not touched; adopting it again adds only what is new.
 */
export const adoptList = (snapshot: Snapshot, inventory: Inventory, measures: System): Adopted => {
  const rows = inventory.plants.map(({ plant, bed, sizeClass, count, roseClass, pot, notes }) => ({
    plant,
    bed,
    sizeClass,
    howMany: count,
    roseClass,
    place: pot ? 'pot' : 'ground',
    notes,
  }));
  const wish: GardenWish = {
    title: 'Make the plant inventory',
    measures,
    tables: { plants: { add: rows } },
    show: 'plants',
  };
  const built = gardenEdits(snapshot, wish);
  const added = built.places.added['plants'] ?? 0;
  return { change: asChange(built, wish), added, already: rows.length - added };
};
