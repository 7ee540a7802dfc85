import type { RoseClass, SizeClass } from './sizeClass';

/** A cell's value. An error cell is passed as its text, such as '#N/A'. */
export type ListCell = string | number | boolean | null;

export interface MergedArea {
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
}

/** A grower's list as a sheet holds it, from A1. Rows and columns count from 0 throughout; sentences count from 1. */
export interface ListSheet {
  readonly cells: readonly (readonly ListCell[])[];
  readonly merges: readonly MergedArea[];
}

export const MEANINGS = ['plant', 'bed', 'class', 'size', 'pot', 'count', 'notes', 'leftOut'] as const;
/** What a column holds. A column of any other kind is kept as a note under its own heading. */
export type Meaning = (typeof MEANINGS)[number];

export const MEANING_LABELS: Readonly<Record<Meaning, string>> = {
  plant: 'Plant',
  bed: 'Bed',
  class: 'Class',
  size: 'Size',
  pot: 'Pot or ground',
  count: 'How many',
  notes: 'Notes',
  leftOut: 'Leave out',
};

/** What the user decides against the guesses. */
export interface Overrides {
  /** Row of the headings (the lowest, where they stand in several rows); null: the list has none. */
  readonly headerRow?: number | null;
  /** Meaning by column. */
  readonly columns?: Readonly<Record<number, Meaning>>;
  /** Whether a blank bed means the bed above it. */
  readonly bedFromAbove?: boolean;
  /** Answers to what was asked (`Inventory.asked`), by its key. */
  readonly sizeClasses?: Readonly<Record<string, SizeClass>>;
}

export interface ColumnGuess {
  readonly index: number;
  /** The column's heading, stacked ones joined; '' where there is none. */
  readonly header: string;
  readonly meaning: Meaning;
  /** 0 to 1; 1 where the user chose. */
  readonly confidence: number;
  /** Why, as the end of a sentence: 'the heading “Qty” says how many'. */
  readonly reason: string;
  /** Up to four different values, in the order of the list. */
  readonly samples: readonly string[];
  /** True where numbers are the spreadsheet's days and are written out as dates in the notes. */
  readonly days: boolean;
}

/** 'stop': nothing can be read; 'ask': the user decides; 'tell': worth knowing. */
export interface Remark {
  readonly kind: 'stop' | 'ask' | 'tell';
  readonly sentence: string;
}

export interface Proposal {
  /** The row right above the plants that holds headings; null where the list has none. */
  readonly headerRow: number | null;
  /** All heading rows at the top, in order. */
  readonly headerRows: readonly number[];
  /** First and last row of the list under its headings; null where nothing follows. */
  readonly dataRows: { readonly first: number; readonly last: number } | null;
  readonly columns: readonly ColumnGuess[];
  /** True where a blank bed means the bed above it. */
  readonly bedFromAbove: boolean;
  /** Cells that a row of this list usually fills. */
  readonly usualCells: number;
  readonly sizeClasses: Readonly<Record<string, SizeClass>>;
  /** What was found, in one sentence. */
  readonly outcome: string;
  readonly problems: readonly Remark[];
}

/** Stands where the list does not tell a size class and the user has not answered yet. */
export const NOT_KNOWN = 'Not known';
/** Bed of the plants that the list puts in none, while it names beds for others. */
export const NO_BED = 'No bed named';
/** Bed of all plants of a list that names no beds. */
export const ONE_BED = 'Garden';

export interface AdoptedPlant {
  readonly plant: string;
  readonly bed: string;
  /** A class of the closed list, or the grower's own word where it is not known; '' where none is given. */
  readonly roseClass: RoseClass | (string & {});
  readonly sizeClass: SizeClass | typeof NOT_KNOWN;
  readonly pot: boolean;
  readonly count: number;
  /** 'Year: 2014; Source: swap'. */
  readonly notes: string;
  readonly sourceRows: readonly number[];
}

export interface UnreadRow {
  readonly row: number;
  readonly reason: string;
  /** What the row holds, cells parted by ' | ', shortened. */
  readonly text: string;
}

/** Plants whose size class the list does not tell; the user's answer goes to `Overrides.sizeClasses[key]`. */
export interface AskedSize {
  readonly key: string;
  /** What the list says: 'class “shrublet”, in a pot'. */
  readonly given: string;
  readonly plants: number;
  readonly sourceRows: readonly number[];
}

/** How the grower's words were understood, and which spellings of a name were taken as one. */
export interface WordReading {
  readonly meaning: 'plant' | 'bed' | 'class' | 'size' | 'pot';
  readonly reading: string;
  readonly texts: readonly string[];
  readonly rows: number;
}

/** Every row of the sheet is in exactly one of these, so that they sum to `rows`. */
export interface Tally {
  readonly rows: number;
  readonly plants: number;
  readonly titles: number;
  readonly headers: number;
  readonly blank: number;
  readonly sections: number;
  readonly totals: number;
  readonly unread: number;
}

export interface Inventory {
  readonly plants: readonly AdoptedPlant[];
  /** In the order in which they first appear. */
  readonly beds: readonly { readonly bed: string; readonly plants: number }[];
  /** In the order of the closed list, not-known ones last. */
  readonly sizeClasses: readonly {
    readonly sizeClass: SizeClass | typeof NOT_KNOWN;
    readonly plants: number;
  }[];
  readonly asked: readonly AskedSize[];
  readonly readings: readonly WordReading[];
  /** Rows that name the bed for the rows under them. */
  readonly sections: readonly { readonly row: number; readonly bed: string }[];
  readonly unread: readonly UnreadRow[];
  readonly tally: Tally;
  readonly outcome: string;
  readonly problems: readonly Remark[];
}
