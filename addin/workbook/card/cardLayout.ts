import type { MeasuringWay } from './cardFormulas';

export interface CardStation {
  readonly name: string;
  /** In walking order. */
  readonly beds: readonly string[];
  /** As planned; a fill that the need no longer asks for stays on the card with nothing to make up. */
  readonly fills: number;
}

export interface CardProduct {
  readonly name: string;
  readonly way: MeasuringWay;
  readonly powder: boolean;
}

/** What a card is made for. Everything that can change afterwards is a formula and not here. */
export interface CardRequest {
  readonly sheet: string;
  /** The spreadsheet's serial day. */
  readonly date: number;
  /** Share of the day. */
  readonly start: number;
  readonly style: 'full' | 'equal';
  readonly mixName: string;
  readonly stations: readonly CardStation[];
  readonly sizeClasses: readonly string[];
  readonly products: readonly CardProduct[];
  readonly hotWaterUnit: string;
  readonly cautions: readonly string[];
  readonly overLabelReason?: string;
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

export const cardLayout = ({ stations, sizeClasses, products, overLabelReason }: CardRequest): CardLayout => {
  const countsAt = COUNTS_AT + (overLabelReason ? 1 : 0);
  const firstStation = countsAt + 4;
  const rows = stationRows(stations, firstStation);
  const lastStation = stations.at(-1);
  const total = (rows.at(-1)?.firstBed ?? firstStation) + (lastStation?.beds.length ?? 0);
  const firstProduct = 3;
  const afterProducts = firstProduct + products.length;
  const hot = products.some(({ powder }) => powder);
  const pumpOut = afterProducts + (hot ? 1 : 0);
  const solution = 2 + sizeClasses.length;
  const last = Math.max(pumpOut + 3, solution);
  return {
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
      workings: last + 2,
    },
  };
};
