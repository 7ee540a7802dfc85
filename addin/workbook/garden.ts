import type { Refusal, System } from '../core';

/**
 * What the sheets hold, as the user wrote it: in the user's units, rows in the order of the sheet. Rows and columns
 * count from 0.
 */
export interface Garden {
  readonly settings: Settings;
  readonly plants: readonly Plant[];
  readonly beds: readonly Bed[];
  /** Unit of every dose, such as "gal". */
  readonly doseUnit: string;
  readonly doses: readonly Dose[];
  readonly rig: RigSheet;
  readonly timedBuckets: TimedBuckets;
  readonly products: readonly Product[];
  readonly mixName: string;
  readonly mix: readonly MixRow[];
  /** Every row or cell that could not be read, and why; none of them is in the lists above. */
  readonly problems: readonly Problem[];
  /** Which sheets the workbook has. */
  readonly has: Readonly<Record<SheetKey, boolean>>;
}

export const SHEET_KEYS = [
  'plants',
  'beds',
  'doses',
  'rig',
  'timedBuckets',
  'products',
  'mix',
  'settings',
] as const;
/** The managed sheets by what they hold; their titles are the user's to change. */
export type SheetKey = (typeof SHEET_KEYS)[number];

export interface Measured {
  readonly value: number;
  readonly unit: string;
}

/** A line of a sheet with a unit, whose value may still be blank. */
export interface Entry {
  readonly value?: number;
  readonly unit: string;
}

export interface Settings {
  readonly gardenName: string;
  readonly grower: string;
  readonly measures: System;
  /** Put before a price, such as "$" or "€". */
  readonly currency: string;
  readonly fillStyle: 'full' | 'equal';
}

/** One line of the plant list: one plant, or several alike in one bed. */
export interface Plant {
  readonly row: number;
  readonly plant: string;
  readonly bed: string;
  readonly sizeClass: string;
  /** Whole, ≥ 0. */
  readonly howMany: number;
  readonly roseClass: string;
  readonly place?: 'pot' | 'ground';
  readonly notes: string;
}

export interface Bed {
  readonly row: number;
  readonly bed: string;
  /** Place in the walk; beds without one come last, in the order of the sheet. */
  readonly walk?: number;
  /** Where the barrel stands for this bed; '' is the same as for the bed before it in the walk. */
  readonly station: string;
  readonly position?: { readonly x: number; readonly y: number };
}

export interface Dose {
  readonly row: number;
  readonly sizeClass: string;
  /** In the garden's dose unit, > 0; left out while the cell is blank. */
  readonly dose?: number;
}

export interface RigSheet {
  readonly barrel: Entry;
  /** Share of the barrel that is filled, 0 < x ≤ 1. */
  readonly fillLine?: number;
  readonly heel: Entry;
  readonly hoseLength: Entry;
  readonly hoseBore: Entry;
  /** Typed by the user in place of what length and bore come to. */
  readonly hoseHolds: Entry;
  /** Typed by the user in place of what the timed buckets come to. */
  readonly flow: Entry;
  readonly tapFlow: Entry;
  /** Seconds from one plant to the next. */
  readonly betweenPlants?: number;
  readonly wandStaysOpen?: boolean;
  /** Counts are whole multiples of this many seconds. */
  readonly countStep?: number;
  readonly emptyWeight: Entry;
  /** Minutes of measuring and dissolving for one fill. */
  readonly premixTime?: number;
  /** Minutes of one move of the barrel. */
  readonly moveTime?: number;
}

export interface TimedBuckets {
  readonly bucket: Entry;
  /** Seconds that the bucket took to fill, each > 0. */
  readonly seconds: readonly number[];
}

export interface Product {
  readonly row: number;
  readonly name: string;
  readonly form: 'powder' | 'liquid' | 'dry';
  /** g/mL as it is measured. */
  readonly density?: number;
  /** Per cent by mass, as the label prints them. */
  readonly N?: number;
  readonly P2O5?: number;
  readonly K2O?: number;
  readonly Fe?: number;
  /** The label's greatest rate, such as 1 tbsp/gal. */
  readonly greatestRate?: Measured;
  /** Grams that dissolve in a litre of water at the bucket's temperature. */
  readonly solubility?: number;
  readonly pack?: Measured;
  /** Of one pack. */
  readonly price?: number;
}

export interface MixRow {
  readonly row: number;
  readonly product: string;
  /** Value > 0 and a unit of rate, such as 1 tbsp/gal. */
  readonly rate: Measured;
}

/** Something on a sheet that could not be read. */
export interface Problem {
  readonly place: Refusal['place'];
  readonly sheet: string;
  readonly row: number;
  readonly column?: number;
  /** Names sheet, row and column, what was given and what is allowed. */
  readonly sentence: string;
}

/** What a round needs besides the sheets. */
export interface RoundOptions {
  /** Seconds after midnight. */
  readonly start: number;
  /** The garden's own way of filling where left out. */
  readonly style?: 'full' | 'equal';
  readonly overLabelReason?: string;
  /** Plans without the rows that could not be read, instead of refusing. */
  readonly leaveOutUnread?: boolean;
}
