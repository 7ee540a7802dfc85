import { cardAreas, CARD } from '../addin/workbook/card/cardNames';
import { readCard } from '../addin/workbook/card/readCard';
import { logAreas, readLog } from '../addin/workbook/log/logRound';
import type { Outline, Snapshot, Workbook } from '../addin/workbook/port';
import { gardenAreas } from '../addin/workbook/readGarden';
import { gardenInShape, newerWords, SHAPE, shapeOf } from '../addin/workbook/shapes';
import { gardenSheets } from '../addin/workbook/sheets/gardenSheets';
import { areaNamed } from '../addin/workbook/snapshot';
import { lackingWords } from '../addin/workbook/tables/layOut';

import type { HostServices } from './services';
import type { PaneState } from './state';

/** What the pane knows of the workbook. */
export type Book = Pick<
  PaneState,
  'garden' | 'ownSheets' | 'card' | 'cardWaits' | 'log' | 'snapshot' | 'newer' | 'lacking'
>;

const OURS = 'wandcount_';

/** Sheets of the user's own that hold something. */
const ownSheets = ({ sheets, names, active }: Outline): PaneState['ownSheets'] => {
  const kept = new Set(
    Object.entries(names).flatMap(([name, { sheet }]) =>
      name.toLowerCase().startsWith(OURS) ? [sheet] : [],
    ),
  );
  return sheets
    .filter(({ name, rows, columns }) => !kept.has(name) && rows > 0 && columns > 0)
    .map(({ name, rows }) => ({ name, rows, active: name === active }));
};

export const readCells = (workbook: Workbook): Promise<Snapshot> =>
  workbook.read((outline) => [...gardenAreas(outline), ...cardAreas(outline), ...logAreas(outline)]);

/** The garden, its card and its log. A workbook without settings takes the measures of the user's locale. */
export const bookIn = (snapshot: Snapshot, { measures }: Pick<HostServices, 'measures'>): Book => {
  const newer = newerWords(snapshot);
  const card = readCard(snapshot);
  return {
    snapshot,
    garden: gardenInShape(snapshot, measures),
    ownSheets: ownSheets(snapshot),
    card,
    cardWaits: card === undefined && areaNamed(snapshot, CARD) !== undefined,
    log: readLog(snapshot),
    newer,
    // What an older program never made is made with the next action.
    lacking: newer === undefined && shapeOf(snapshot) >= SHAPE ? lackingWords(gardenSheets, snapshot) : [],
  };
};
