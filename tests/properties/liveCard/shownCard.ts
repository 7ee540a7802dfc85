import { CARD, CARD_WORKINGS } from '../../../addin/workbook/card/cardNames';
import type { CellState, Snapshot } from '../../../addin/workbook/port';
import { areaNamed, cellsOf } from '../../../addin/workbook/snapshot';

export type Shown = string | number | boolean | null;

export interface ShownFill {
  /** 'Fill 3', or '' for one that is not needed any more. */
  readonly name: string;
  readonly makeUp: Shown;
  readonly products: readonly Shown[];
  readonly hotWater: Shown | undefined;
  readonly pumpOut: Shown;
  readonly times: readonly Shown[];
}

export interface ShownBed {
  readonly bed: string;
  readonly plants: readonly Shown[];
  readonly solution: Shown;
}

/** A card as a person reads it: found by its words, not by where the program put them. */
export interface ShownCard {
  readonly title: Shown;
  readonly answer: Shown;
  readonly warning: Shown;
  readonly reasons: readonly string[];
  readonly doseUnit: string;
  readonly counts: readonly { sizeClass: string; count: Shown; dose: Shown; plants: Shown }[];
  readonly stations: readonly {
    title: string;
    unit: string;
    products: readonly string[];
    fills: readonly ShownFill[];
    beds: readonly ShownBed[];
  }[];
  readonly total: { madeUp: Shown; products: readonly Shown[]; pumped: Shown; doneBy: Shown };
  readonly cautions: string;
  /** The workings' columns of measures, by their heads: a row a product of a fill. */
  readonly measures: Readonly<Record<string, readonly Shown[]>>;
  /** Every cell that is printed. */
  readonly printed: readonly Shown[];
}

const MEASURE_HEADS = ['Exact', 'At most', 'Measured', 'In words', 'Off'];

const shownIn = (snapshot: Snapshot, name: string): Shown[][] => {
  const area = areaNamed(snapshot, name);
  if (!area) throw new Error(`The workbook has no ${name}.`);
  return cellsOf(snapshot, area).map((row) => row.map(({ value, error }: CellState) => error ?? value));
};

const text = (cell: Shown | undefined): string => (cell === null || cell === undefined ? '' : String(cell));

const wordsAfter = (cell: Shown | undefined): string => text(cell).replace(/^[^,]*, /, '');

/** The card of a workbook, as its cells show it. */
export const shownCard = (snapshot: Snapshot): ShownCard => {
  const rows = shownIn(snapshot, CARD);
  const all = shownIn(snapshot, CARD_WORKINGS);
  const at = (row: number, column: number): Shown => rows[row]?.[column] ?? null;
  const counts = rows.findIndex((row) => row[1] === 'Hold the wand');
  const total = rows.findIndex((row) => row[1] === 'Whole round');
  const heads = rows.flatMap((row, index) => (row[1] === 'Fill' && index > counts ? [index] : []));
  const columnOf = (row: number, head: string) => rows[row]!.indexOf(head);
  const pumpOut = columnOf(heads[0]!, 'Pump out');
  const hot = columnOf(heads[0]!, 'Hot water');
  const products = (row: number) => rows[row]!.slice(3, hot < 0 ? pumpOut : hot);
  const stations = heads.map((head, index) => {
    const bedHead = rows.findIndex((row, place) => place > head && row[1] === 'Bed');
    const end = index + 1 < heads.length ? heads[index + 1]! - 1 : total;
    const solution = rows[bedHead]!.findIndex((cell) => text(cell).startsWith('Solution, '));
    return {
      title: text(at(head - 1, 1)),
      unit: wordsAfter(at(head, 2)),
      products: products(head).map(text),
      fills: rows.slice(head + 1, bedHead).map((row, fill): ShownFill => ({
        name: text(row[1]),
        makeUp: row[2] ?? null,
        products: products(head + 1 + fill),
        hotWater: hot < 0 ? undefined : (row[hot] ?? null),
        pumpOut: row[pumpOut] ?? null,
        times: row.slice(pumpOut + 1, pumpOut + 4),
      })),
      beds: rows.slice(bedHead + 1, end).map((row): ShownBed => ({
        bed: text(row[1]),
        plants: row.slice(2, solution),
        solution: row[solution] ?? null,
      })),
    };
  });
  const sizes = rows[counts]!.slice(2).filter((cell) => text(cell) !== '');
  const column = (head: string): Shown[] => {
    const place = all[0]!.indexOf(head);
    return place < 0
      ? []
      : all
          .slice(1, 1 + stations.flatMap(({ fills }) => fills).length * products(heads[0]!).length)
          .map((row) => row[place] ?? null);
  };
  return {
    title: at(0, 0),
    answer: at(1, 0),
    warning: at(2, 0),
    reasons: rows.slice(3, counts).map((row) => text(row[0])),
    doseUnit: wordsAfter(at(counts + 2, 1)),
    counts: sizes.map((sizeClass, index) => ({
      sizeClass: text(sizeClass),
      count: at(counts + 1, 2 + index),
      dose: at(counts + 2, 2 + index),
      plants: at(counts + 3, 2 + index),
    })),
    stations,
    total: {
      madeUp: at(total, 2),
      products: products(total),
      pumped: at(total, pumpOut),
      doneBy: at(total, pumpOut + 3),
    },
    cautions: rows
      .slice(total + 1)
      .map((row) => text(row[0]))
      .join(' '),
    measures: Object.fromEntries(MEASURE_HEADS.map((head) => [head, column(head)])),
    printed: rows.flat(),
  };
};
