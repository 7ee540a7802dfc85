import type { Area, Change, Edit } from '../change';
import type { Garden } from '../garden';
import { clearedEdits, extent, isFree, pageEdits, type PageCell } from '../page';
import type { Snapshot } from '../port';
import { putBackWords } from '../sheets/putBack';
import { standingSheets } from '../sheets/standingSheets';
import { freeTitle } from '../tables/layOut';
import { cardCells } from './cardCells';
import { cardLayout, type CardLayout, type CardRequest } from './cardLayout';
import { CARD, CARD_WORKINGS, cardNames, cardParts, isPasted } from './cardNames';
import { cardPage } from './cardPage';
import { cardRequest } from './cardRequest';
import type { CardOptions, PlannedRound } from './cardRequest';
import { cardSources, type CardSources } from './cardSources';
import { WIDTHS, measureWidth } from './cardWidths';

const TITLE = 'Round card';

interface Laid {
  readonly request: CardRequest;
  readonly layout: CardLayout;
  readonly printed: readonly PageCell[];
  readonly workings: readonly PageCell[];
}

const laid = (sources: CardSources, request: CardRequest, aside: number): Laid => {
  const layout = cardLayout(request, aside);
  const cells = cardCells(sources, request, layout);
  const isPrinted = ({ column }: PageCell) => column <= layout.column.last;
  return {
    request,
    layout,
    printed: cells.filter(isPrinted),
    workings: cells.filter((cell) => !isPrinted(cell)),
  };
};

/** What the next card takes the place of: an earlier one, unless somebody has made it his own. */
const replaced = (snapshot: Snapshot): Area[] => (isPasted(snapshot) ? [] : cardParts(snapshot));

/** The card on its sheet, its workings past what the user wrote beside it; on a new sheet where that is in the way. */
const laidClear = (snapshot: Snapshot, sources: CardSources, request: CardRequest): Laid => {
  const earlier = replaced(snapshot);
  const clear = (cells: readonly PageCell[]) => isFree(snapshot, extent(request.sheet, cells), earlier);
  let made = laid(sources, request, 0);
  if (!clear(made.printed)) return laid(sources, { ...request, sheet: newTitle(snapshot) }, 0);
  for (let aside = 1; !clear(made.workings); aside += 1) made = laid(sources, request, aside);
  return made;
};

const newTitle = (snapshot: Snapshot): string =>
  freeTitle(
    TITLE,
    snapshot.sheets.map(({ name }) => name),
  );

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
  const { measures } = garden.settings;
  const { edits: mended, places, made } = standingSheets(snapshot, measures, cardSources, 'make the card');
  const earlier = replaced(snapshot);
  const wanted = earlier[0]?.sheet ?? newTitle(snapshot);
  const asked = cardRequest(wanted, snapshot, places, garden, round, options);
  const { request, layout, printed, workings } = laidClear(snapshot, cardSources(places), asked);
  const { sheet } = request;
  const [card, beside] = [extent(sheet, printed), extent(sheet, workings)];
  const { column } = layout;
  const width = (at: number, columns: number, characters: number): Edit => ({
    kind: 'width',
    sheet,
    column: at,
    columns,
    characters,
  });
  const names = { ...cardNames(request, layout), [CARD]: card, [CARD_WORKINGS]: beside };
  return {
    title: 'Make the card',
    says: putBackWords(made),
    edits: [
      ...mended,
      ...(snapshot.sheets.some(({ name }) => name === sheet) ? [] : [{ kind: 'addSheet', sheet } as const]),
      ...clearedEdits(earlier),
      width(column.tick, 1, WIDTHS.tick),
      width(column.name, 1, WIDTHS.name),
      width(column.makeUp, column.last - column.name, WIDTHS.other),
      ...(request.products.length > 0
        ? [width(column.firstProduct, request.products.length, measureWidth(request))]
        : []),
      width(beside.column, beside.columns, WIDTHS.workings),
      // After the widths: Calc makes a row as high as its cells need when they are filled, and never less.
      ...pageEdits(sheet, printed),
      ...pageEdits(sheet, workings),
      ...Object.entries(names).map(([name, area]): Edit => ({ kind: 'name', name, area })),
      cardPage(card, request, layout),
      { kind: 'activate', sheet, row: 0, column: 0 },
    ],
  };
};
