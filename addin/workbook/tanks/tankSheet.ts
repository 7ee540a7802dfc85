import type { System } from '../../core';
import type { Area, Change, Edit } from '../change';
import { cardSources } from '../card/cardSources';
import { clearedEdits, extent, pageEdits } from '../page';
import type { Snapshot } from '../port';
import { putBackWords } from '../sheets/putBack';
import { standingSheets } from '../sheets/standingSheets';
import { areaNamed } from '../snapshot';
import { freeTitle } from '../tables/layOut';
import { tankCells, tankChartAreas } from './tankCells';
import type { TankRequest } from './tankCells';

const TITLE = 'Tank what-if';
/** The sheet's cells, found again under this name wherever the user moves or renames the sheet. */
const TANKS = 'Wandcount_Tanks';
const FIRST_WIDTH = 24;
const WIDTH = 14;
const COLUMNS = 8;

/**
 * The barrels side by side as a sheet of live formulas, with a chart.
 *
 * @param snapshot with `gardenAreas` read
 * @throws WorkbookError where a sheet that the formulas read is not there
 */
export const tankSheet = (
  snapshot: Snapshot,
  wanted: Omit<TankRequest, 'sheet'>,
  measures: System,
): Change => {
  const { edits: mended, places, made } = standingSheets(snapshot, measures, cardSources, 'compare barrels');
  const earlier = areaNamed(snapshot, TANKS);
  const sheet =
    earlier?.sheet ??
    freeTitle(
      TITLE,
      snapshot.sheets.map(({ name }) => name),
    );
  const request: TankRequest = { ...wanted, sheet };
  const cells = tankCells(cardSources(places), request);
  const all: Area = extent(sheet, cells);
  const { labels, mixing, round } = tankChartAreas(request);
  const edits: Edit[] = [
    ...mended,
    ...(earlier ? [] : [{ kind: 'addSheet', sheet } as const]),
    ...clearedEdits(earlier ? [earlier] : []),
    ...pageEdits(sheet, cells),
    { kind: 'width', sheet, column: 0, columns: 1, characters: FIRST_WIDTH },
    { kind: 'width', sheet, column: 1, columns: COLUMNS - 1, characters: WIDTH },
    { kind: 'name', name: TANKS, area: all },
    { kind: 'width', sheet, column: COLUMNS + 1, columns: 1, characters: FIRST_WIDTH },
    { kind: 'page', area: { ...all, columns: COLUMNS }, landscape: true, repeatRows: 0 },
    {
      kind: 'chart',
      id: 'tanks',
      sheet,
      row: all.rows + 1,
      column: 0,
      type: 'bar',
      title: 'Minutes for one round, by size of barrel',
      finding: request.finding,
      labels,
      series: [
        { name: 'Whole round, min', values: round },
        { name: 'Mixing and filling, min', values: mixing },
      ],
    },
    { kind: 'activate', sheet, row: 0, column: 0 },
  ];
  return { title: 'Compare barrels', edits, says: putBackWords(made) };
};
