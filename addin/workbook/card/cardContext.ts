import type { CellInput, StyleToken } from '../change';
import type { PageCell } from '../page';
import { cells } from './cardFormulas';
import type { CardLayout, CardRequest } from './cardLayout';
import type { CardSources } from './cardSources';

export const TIME = 'hh:mm';
export const VOLUME = '#,##0.0';

/** What every part of the card is made from. */
export interface CardContext {
  readonly sources: CardSources;
  readonly request: CardRequest;
  readonly layout: CardLayout;
}

/** A box to tick: an empty cell of one's own to fill, drawn as a box by every program. */
export const tickBox = (row: number, column: number): PageCell => ({
  row,
  column,
  input: null,
  style: 'input',
});

export const place = (
  row: number,
  column: number,
  input: CellInput,
  style?: StyleToken,
  format?: string,
): PageCell => ({ row, column, input, ...(style && { style }), ...(format && { format }) });

/** Cells of the workings whose place other parts of the program know. */
export const workingsAt = (first: number) => ({
  date: { row: 0, column: first + 1 },
  start: { row: 1, column: first + 1 },
  style: { row: 2, column: first + 1 },
  mix: { row: 3, column: first + 1 },
  fills: { row: 4, column: first + 1 },
  plants: { row: 5, column: first + 1 },
  madeUp: { row: 0, column: first + 3 },
  need: { row: 1, column: first + 3 },
  finish: { row: 2, column: first + 3 },
  cost: { row: 3, column: first + 3 },
  /** Header row of the products' list: name, unit, total, cost. */
  products: { row: 0, column: first + 5 },
  /** A station's figures, in its row of fill heads. */
  need0: first,
  plants0: first + 1,
  fills0: first + 2,
  /** Three columns a product: exact, what the label allows, measured. */
  productColumns: first + 5,
});

/** One sum over the same column of every station's fills. */
export const overFills = ({ request, layout }: CardContext, column: number): string =>
  `SUM(${layout.stations
    .map(({ firstFill }, index) =>
      cells(firstFill, column, firstFill + request.stations[index]!.fills - 1, column),
    )
    .join(',')})`;
