import type { Edit } from '../change';
import type { CellState, Snapshot } from '../port';
import { areaNamed, cellsOf } from '../snapshot';
import { CARD, CARD_CELLS, CARD_CHECK, CARD_PRODUCTS, cardParts, isUnguarded } from './cardNames';
import { EARLIER_CARD } from './readCard';

/** Formulas of a measure, in any spelling of their names. */
const OF_A_MEASURE = /FEED[._](?:MEASURE|DILUTE|PREMIX)\(/i;

const frozen = (snapshot: Snapshot, name: string): Edit[] => {
  const area = areaNamed(snapshot, name);
  if (!area) return [];
  const { sheet, row, column } = area;
  const cells = cellsOf(snapshot, area).map((line) => line.map(({ value }) => value));
  return [{ kind: 'write', sheet, row, column, cells }];
};

/**
 * Edits that take the measures off a card which blanks none by itself, as one that an earlier program made: it would
 * show twice what a label allows when a rate is doubled. What the log takes of it stays, as values. Nothing to do on
 * any other card.
 *
 * @param snapshot with `cardAreas` read
 */
export const retireCard = (snapshot: Snapshot): readonly Edit[] => {
  const printed = areaNamed(snapshot, CARD);
  const [all] = cardParts(snapshot);
  if (!printed || !all || !isUnguarded(snapshot)) return [];
  const { sheet } = printed;
  const measures = cellsOf(snapshot, all).flatMap((line, row) =>
    line.flatMap(({ formula }: CellState, column): Edit[] =>
      formula !== undefined && OF_A_MEASURE.test(formula)
        ? [{ kind: 'write', sheet, row: all.row + row, column: all.column + column, cells: [[null]] }]
        : [],
    ),
  );
  if (measures.length === 0) return [];
  const check = areaNamed(snapshot, CARD_CHECK);
  const said = (row: number, column: number, text: string): Edit => ({
    kind: 'write',
    sheet,
    row,
    column,
    cells: [[text]],
  });
  const names = [...Object.values(CARD_CELLS), CARD_PRODUCTS];
  return [
    ...names.flatMap((name) => frozen(snapshot, name)),
    ...measures,
    said(printed.row, printed.column, 'Round card: make it again'),
    said(printed.row + 1, printed.column, 'This card is out of date'),
    ...(check ? [said(check.row, check.column, EARLIER_CARD)] : []),
  ];
};
