import { fixedReference } from '../address';
import { headerArea } from '../tables/site';
import { columnArea } from '../tables/template';
import type { Places } from '../tables/template';

/** A number on another sheet and the cell that says its unit, both as formula text. */
export interface MeasuredCell {
  readonly value: string;
  readonly unit: string;
}

/** Columns of the Beds sheet that say in which order the beds are fed, and from where. */
export const WALK = ['walk', 'bed', 'station'] as const;
/** Columns of the Plants sheet that say how many of which size stand where. */
export const PLANTED = ['bed', 'sizeClass', 'howMany'] as const;

/** Tables whose columns the card's formulas read. */
export const HEADED = ['plants', 'beds', 'doses', 'products', 'mix'] as const;

/**
 * Where the formulas of the card and of the tank sheet find what the other sheets hold, as formula text. References,
 * not names: they follow every change of the sheets in every host.
 */
export const cardSources = (places: Places) => {
  const column = (table: string, key: string) => fixedReference(columnArea(places, table, key, 'whole'));
  const named = (name: string): string => {
    const area = places.cells[name];
    if (!area) throw new Error(`No cell is known under the name “${name}”.`);
    return fixedReference(area);
  };
  const measured = (name: string): MeasuredCell => ({ value: named(name), unit: named(`${name}_unit`) });
  return {
    /** Rows of heads of the tables that are read. */
    heads: HEADED.map((table) => fixedReference(headerArea(places.sites[table]!))),
    plants: {
      /** The first three without their headers. */
      planted: PLANTED.map((key) => fixedReference(columnArea(places, 'plants', key))),
      bed: column('plants', 'bed'),
      sizeClass: column('plants', 'sizeClass'),
      howMany: column('plants', 'howMany'),
      solution: column('plants', 'solution'),
    },
    beds: {
      bed: column('beds', 'bed'),
      station: column('beds', 'station'),
      plants: column('beds', 'plants'),
      solution: column('beds', 'solution'),
      /** Without the header: what the walk is made of. */
      walk: WALK.map((key) => fixedReference(columnArea(places, 'beds', key))),
    },
    doses: {
      sizeClass: column('doses', 'sizeClass'),
      dose: column('doses', 'dose'),
      unit: named('Doses_unit'),
    },
    mix: {
      product: column('mix', 'product'),
      rate: column('mix', 'rate'),
      rateUnit: column('mix', 'rateUnit'),
      name: named('Mix_name'),
    },
    products: {
      product: column('products', 'name'),
      form: column('products', 'form'),
      density: column('products', 'density'),
      greatestRate: column('products', 'greatestRate'),
      greatestRateUnit: column('products', 'greatestRateUnit'),
      solubility: column('products', 'solubility'),
      price: column('products', 'price'),
      pack: column('products', 'pack'),
      packUnit: column('products', 'packUnit'),
    },
    rig: {
      barrel: measured('Rig_barrel'),
      heel: measured('Rig_heel'),
      flow: measured('Rig_flow'),
      tapFlow: measured('Rig_tap_flow'),
      hose: measured('Rig_hose_holds'),
      emptyWeight: measured('Rig_empty_weight'),
      fillLine: named('Rig_fill_line'),
      betweenPlants: named('Rig_between_plants'),
      wandStaysOpen: named('Rig_wand_stays_open'),
      countStep: named('Rig_count_step'),
      premixMinutes: named('Rig_premix_time'),
      moveMinutes: named('Rig_move_time'),
    },
  };
};

export type CardSources = ReturnType<typeof cardSources>;
