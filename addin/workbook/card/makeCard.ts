import type { Area, Change, Edit } from '../change';
import type { Garden } from '../garden';
import { extent, pageEdits } from '../page';
import type { Snapshot } from '../port';
import { standingSheets } from '../sheets/standingSheets';
import { areaNamed } from '../snapshot';
import { freeTitle } from '../tables/buildSheets';
import { cardCells } from './cardCells';
import { cardLayout } from './cardLayout';
import { CARD, CARD_ALL, cardNames } from './cardNames';
import { cardPage } from './cardPage';
import { cardRequest } from './cardRequest';
import type { CardOptions, PlannedRound } from './cardRequest';
import { cardSources } from './cardSources';
import { WIDTHS, measureWidth } from './cardWidths';

const TITLE = 'Round card';

/**
 * The card of a round as a sheet of live formulas: a dose, rate or barrel changed afterwards changes it, and what it
 * cannot follow blanks its measures. It is laid over an earlier card; what the user wrote elsewhere on that sheet stays.
 *
 * @param snapshot with `gardenAreas` and `cardAreas` read
 * @throws WorkbookError where a sheet that the formulas read is not there
 */
export const makeCard = (
  snapshot: Snapshot,
  garden: Garden,
  round: PlannedRound,
  options: CardOptions,
): Change => {
  const { edits: mended, places } = standingSheets(snapshot, garden.settings.measures, 'make the card');
  const earlier = areaNamed(snapshot, CARD_ALL);
  const sheet =
    earlier?.sheet ??
    freeTitle(
      TITLE,
      snapshot.sheets.map(({ name }) => name),
    );
  const request = cardRequest(sheet, snapshot, places, garden, round, options);
  const layout = cardLayout(request);
  const cells = cardCells(cardSources(places), request, layout);
  const all = extent(sheet, cells);
  const { column } = layout;
  const printed: Area = { sheet, row: 0, column: 0, rows: all.rows, columns: column.last + 1 };
  const width = (at: number, columns: number, characters: number): Edit => ({
    kind: 'width',
    sheet,
    column: at,
    columns,
    characters,
  });
  const names = { ...cardNames(request, layout), [CARD]: printed, [CARD_ALL]: all };
  return {
    title: 'Make the card',
    edits: [
      ...mended,
      ...(earlier ? [] : [{ kind: 'addSheet', sheet } as const]),
      ...pageEdits(sheet, cells, earlier),
      width(column.tick, 1, WIDTHS.tick),
      width(column.name, 1, WIDTHS.name),
      width(column.makeUp, column.last - column.name, WIDTHS.other),
      ...(request.products.length > 0
        ? [width(column.firstProduct, request.products.length, measureWidth(request))]
        : []),
      width(column.workings, all.column + all.columns - column.workings, WIDTHS.workings),
      ...Object.entries(names).map(([name, area]): Edit => ({ kind: 'name', name, area })),
      cardPage(printed, request, layout),
      { kind: 'activate', sheet, row: 0, column: 0 },
    ],
  };
};
