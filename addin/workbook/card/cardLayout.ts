import type { CautionId } from '../../core';

export interface CardStation {
  readonly name: string;
  /** In walking order. */
  readonly beds: readonly string[];
  /** As planned; a fill that the need no longer asks for stays on the card with nothing in it. */
  readonly fills: number;
}

export interface CardProduct {
  readonly name: string;
  /** What it is measured in: tsp, imp fl oz, mL, oz or g. */
  readonly unit: string;
  readonly form: 'powder' | 'liquid';
  /** As the round was planned; what a reason above the label was given for. */
  readonly rate: { readonly value: number; readonly unit: string };
  /** True where the label's greatest rate was known. */
  readonly labelKnown: boolean;
  /** What the whole round takes as planned, in its unit, and what that costs. */
  readonly measured: number;
  readonly cost?: number;
}

/** What the round came to when the card was made, in the barrel's unit: the record that is logged of it later. */
export interface CardRecord {
  /** The spreadsheet's serial day. */
  readonly date: number;
  /** Shares of the day. */
  readonly start: number;
  readonly mix: string;
  readonly fills: number;
  readonly plants: number;
  readonly madeUp: number;
  readonly need: number;
  /** Share of the day. */
  readonly finish: number;
  readonly unit: string;
  readonly cost?: number;
}

/** What a card is made for. Everything that can change afterwards is a formula and not here. */
export interface CardRequest {
  readonly sheet: string;
  /** The spreadsheet's serial day. */
  readonly date: number;
  /** Share of the day. */
  readonly start: number;
  readonly style: 'full' | 'equal';
  /** What the round is called while the mix has no name. */
  readonly unnamed: string;
  readonly stations: readonly CardStation[];
  readonly sizeClasses: readonly string[];
  readonly products: readonly CardProduct[];
  readonly hotWaterUnit: string;
  readonly weightUnit: string;
  readonly cautions: readonly { readonly id: CautionId; readonly text: string }[];
  /** Places of the products that are above their label, and why; '' where none is. */
  readonly overLabel: readonly number[];
  readonly overLabelReason: string;
  /** True where plant rows that cannot be read are left out. */
  readonly leaveOutUnread: boolean;
  /** Plants by bed and size, where formulas could not count them as they were read; undefined where they can. */
  readonly planted?: Readonly<Record<string, number>>;
  /** The plants as they were read, column by column, where `planted` holds. */
  readonly plantsMarks: readonly string[];
  /** The walk as it was read, column by column. */
  readonly walkMarks: readonly string[];
  /** The heads of the sheets, as they were found. */
  readonly headMarks: readonly string[];
  readonly made: CardRecord;
}

export interface StationRows {
  readonly title: number;
  readonly fillHeader: number;
  readonly firstFill: number;
  readonly bedHeader: number;
  readonly firstBed: number;
}

/** Where the parts of a card stand. Rows and columns count from 0. */
export interface CardLayout {
  /** Lines on which a reason above the label is printed; none where nothing is above one. */
  readonly reason: { readonly row: number; readonly rows: number };
  readonly counts: {
    readonly header: number;
    readonly seconds: number;
    readonly dose: number;
    readonly plants: number;
  };
  readonly stations: readonly StationRows[];
  readonly total: number;
  readonly cautions: number;
  readonly column: {
    readonly tick: number;
    readonly name: number;
    readonly makeUp: number;
    readonly firstClass: number;
    readonly firstProduct: number;
    /** Left out for a mix without powders. */
    readonly hotWater?: number;
    readonly pumpOut: number;
    readonly start: number;
    readonly pumpFrom: number;
    readonly doneBy: number;
    readonly solution: number;
    readonly last: number;
    /** First column of the workings, which are not printed. */
    readonly workings: number;
  };
}

/** Title, answer and what is out of date stand above the counts. */
const COUNTS_AT = 3;

// No blank rows between the parts: a row is a line of the one page that is taken outdoors.
const stationRows = (stations: readonly CardStation[], first: number): StationRows[] => {
  let row = first;
  return stations.map(({ beds, fills }) => {
    const rows = {
      title: row,
      fillHeader: row + 1,
      firstFill: row + 2,
      bedHeader: row + 2 + fills,
      firstBed: row + 3 + fills,
    };
    row = rows.firstBed + beds.length;
    return rows;
  });
};

/**
 * @param aside columns that the workings stand further to the right, past what the user wrote beside the card
 */
export const cardLayout = (
  { stations, sizeClasses, products, overLabel }: CardRequest,
  aside = 0,
): CardLayout => {
  // A line for each product above its label, one for the reason.
  const reason = { row: COUNTS_AT, rows: overLabel.length === 0 ? 0 : overLabel.length + 1 };
  const countsAt = COUNTS_AT + reason.rows;
  const firstStation = countsAt + 4;
  const rows = stationRows(stations, firstStation);
  const lastStation = stations.at(-1);
  const total = (rows.at(-1)?.firstBed ?? firstStation) + (lastStation?.beds.length ?? 0);
  const firstProduct = 3;
  const afterProducts = firstProduct + products.length;
  const hot = products.some(({ form }) => form === 'powder');
  const pumpOut = afterProducts + (hot ? 1 : 0);
  const solution = 2 + sizeClasses.length;
  const last = Math.max(pumpOut + 3, solution);
  return {
    reason,
    counts: { header: countsAt, seconds: countsAt + 1, dose: countsAt + 2, plants: countsAt + 3 },
    stations: rows,
    total,
    cautions: total + 1,
    column: {
      tick: 0,
      name: 1,
      makeUp: 2,
      firstClass: 2,
      firstProduct,
      ...(hot ? { hotWater: afterProducts } : {}),
      pumpOut,
      start: pumpOut + 1,
      pumpFrom: pumpOut + 2,
      doneBy: pumpOut + 3,
      solution,
      last,
      workings: last + 2 + aside,
    },
  };
};
