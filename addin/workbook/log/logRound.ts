import type { System } from '../../core';
import type { CardReading } from '../card/readCard';
import type { Area, Change } from '../change';
import type { Outline, Snapshot } from '../port';
import { areasOf } from '../readGarden';
import { putBackWords } from '../sheets/putBack';
import { placeSheets } from '../tables/buildSheets';
import { type SheetSet } from '../tables/layOut';
import { readTable } from '../tables/readTable';
import { DONE_BY_WIDTH, feedLogTable, productUseTable } from './logTables';

export const logSheets: SheetSet = {
  sheets: [
    { kind: 'table', table: feedLogTable },
    { kind: 'table', table: productUseTable },
  ],
};

/** What to read of a workbook for its log. */
export const logAreas = (outline: Outline): Area[] => areasOf(logSheets, outline);

/** One round of the log. Volumes are in `unit`. */
export interface LoggedRound {
  readonly round: number;
  /** The spreadsheet's serial day. */
  readonly date: number;
  readonly mix: string;
  readonly plants: number;
  readonly fills: number;
  readonly need?: number;
  readonly madeUp: number;
  readonly leftOver: number;
  readonly unit: string;
  readonly cost?: number;
  readonly notes: string;
}

/**
 * The rounds of the log, the newest first.
 *
 * @param snapshot with `logAreas` read
 */
export const readLog = (
  snapshot: Snapshot,
): { readonly rounds: readonly LoggedRound[]; readonly problems: readonly string[] } => {
  const { rows, problems } = readTable(feedLogTable, snapshot);
  const rounds = (rows as readonly LoggedRound[]).toSorted((a, b) => b.date - a.date || b.round - a.round);
  return { rounds, problems: problems.map(({ sentence }) => sentence) };
};

/** What the grower says of a round that was fed; the rest comes from the card. */
export interface RoundFed {
  /** The spreadsheet's serial day. */
  readonly date: number;
  /** What stayed in the barrel, all stations together, in the card's unit; 0 ≤ left over ≤ made up. */
  readonly leftOver: number;
  /** What was really made up, in the card's unit; the card's own figure where left out. */
  readonly madeUp?: number;
  readonly fills?: number;
  readonly notes: string;
}

const MINUTES_A_DAY = 1440;
/** As the card tells it: a format of cells would cut seconds off. */
const wholeMinute = (days: number): number => Math.floor(days * MINUTES_A_DAY + 0.500001) / MINUTES_A_DAY;

/** The rounds have numbers 1, 2, 3 …; a number is never used twice, even where lines were deleted in between. */
const nextNumber = (snapshot: Snapshot): number =>
  Math.max(
    0,
    ...readTable(feedLogTable, snapshot).rows.map(({ round }) => round as number),
    ...readTable(productUseTable, snapshot).rows.map(({ round }) => round as number),
  ) + 1;

/**
 * A line of the log for the round that the card planned, and a line of product use for each product. Products go
 * with what was made up: half a barrel less took half a barrel's product less.
 *
 * @param snapshot with `logAreas` read
 */
export const logRound = (snapshot: Snapshot, measures: System, card: CardReading, fed: RoundFed): Change => {
  const round = nextNumber(snapshot);
  const madeUp = fed.madeUp ?? card.madeUp;
  const share = card.madeUp > 0 ? madeUp / card.madeUp : 1;
  const { date, leftOver, notes } = fed;
  const { mix, plants, need, unit, start, finish } = card;
  const cost = card.cost === undefined ? undefined : card.cost * share;
  const line = {
    round,
    date,
    mix,
    plants,
    fills: fed.fills ?? card.fills,
    need,
    madeUp,
    leftOver,
    unit,
    cost,
    start,
    finish: wholeMinute(finish),
    notes,
  };
  const use = card.products.map((used) => ({
    round,
    date,
    product: used.product,
    amount: used.amount * share,
    unit: used.unit,
    cost: used.cost === undefined ? undefined : used.cost * share,
  }));
  const { edits, places, made } = placeSheets(logSheets, snapshot, {
    measures,
    tables: { feedLog: { add: [line] }, productUse: { add: use } },
  });
  // The column is narrow in logs of earlier programs.
  const { sheet, columns } = places.sites['feedLog']!;
  const room = {
    kind: 'width',
    sheet,
    column: columns['finish']!,
    columns: 1,
    characters: DONE_BY_WIDTH,
  } as const;
  return {
    title: `Log round ${round}`,
    edits: wholeMinute(finish) < 1 ? edits : [...edits, room],
    says: putBackWords(made),
  };
};
