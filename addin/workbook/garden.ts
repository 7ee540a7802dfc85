import type { Refusal, System } from '../core';
import type { Measured } from './fields/holds';
import type { bedsTable } from './sheets/beds';
import type { dosesTable } from './sheets/doses';
import type { mixTable } from './sheets/mix';
import type { plantsTable } from './sheets/plants';
import type { productsTable } from './sheets/products';
import type { rigForm } from './sheets/rig';
import type { settingsForm } from './sheets/settings';
import type { FormRow } from './tables/form';
import type { RowOf } from './tables/table';

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
  /** Seconds that the rig's bucket took to fill, each > 0. */
  readonly timedBuckets: readonly number[];
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

// What a row holds is declared with its sheet, in `sheets`: a new line or column is there at once.

export type Settings = FormRow<typeof settingsForm> & { readonly measures: System };

/** The barrel, pump, hose and wand. A flow or hose content is there only where the user typed one. */
export type RigSheet = FormRow<typeof rigForm>;

/** One line of the plant list: one plant, or several alike in one bed. */
export type Plant = RowOf<typeof plantsTable>;

/** Beds without a place in the walk come last; a station of '' is the same as for the bed before in the walk. */
export type Bed = RowOf<typeof bedsTable>;

/** The dose is in the garden's dose unit, and left out while the cell is blank. */
export type Dose = RowOf<typeof dosesTable>;

export type Product = RowOf<typeof productsTable>;

/** A product of the mix; its rate is above 0. */
export type MixRow = RowOf<typeof mixTable> & { readonly rate: Measured };

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
