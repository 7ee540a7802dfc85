import { cellAddress } from '../../addin/workbook/address';
import { CARD, cardAreas } from '../../addin/workbook/card/cardNames';
import { readCard } from '../../addin/workbook/card/readCard';
import { logAreas, readLog } from '../../addin/workbook/log/logRound';
import type { CellState, Workbook } from '../../addin/workbook/port';
import { gardenAreas } from '../../addin/workbook/readGarden';
import { gardenInShape } from '../../addin/workbook/shapes';
import { dayOfSerial } from '../../taskpane/time';
import { areaNamed } from '../../addin/workbook/snapshot';
import type { Kept, OwnCells } from './earlierFiles';

/** Every cell in use by its place, such as "Plants!C5". */
export type Cells = ReadonlyMap<string, CellState>;

export const cellsIn = async (workbook: Workbook): Promise<Cells> => {
  const { sheets } = await workbook.outline();
  const { blocks } = await workbook.read(
    sheets
      .filter(({ rows }) => rows > 0)
      .map(({ name, rows, columns }) => ({ sheet: name, row: 0, column: 0, rows, columns })),
  );
  const cells = new Map<string, CellState>();
  for (const { area, cells: lines } of blocks)
    for (const [row, line] of lines.entries())
      for (const [column, cell] of line.entries())
        if (cell.value !== null || cell.formula !== undefined || cell.error !== undefined)
          cells.set(`${area.sheet}!${cellAddress(row, column)}`, cell);
  return cells;
};

const measured = (entry: { value?: number; unit: string } | undefined): string =>
  entry?.value === undefined ? '' : `${entry.value} ${entry.unit}`;

/** What the program reads of a workbook, told as its user had put it in, and what it could not read. */
const readAsKept = async (
  workbook: Workbook,
): Promise<{ readonly kept: Omit<Kept, 'own'>; readonly unread: readonly string[] }> => {
  const outline = await workbook.outline();
  const snapshot = await workbook.read([
    ...gardenAreas(outline),
    ...cardAreas(outline),
    ...logAreas(outline),
  ]);
  const [garden, card, log] = [gardenInShape(snapshot, 'US'), readCard(snapshot), readLog(snapshot)];
  const withPlants = new Set(garden.plants.map(({ sizeClass }) => sizeClass));
  const barrel = measured(garden.rig.barrel);
  const kept = {
    plants: garden.plants.map(
      ({ plant, bed, sizeClass, howMany }) => [plant, bed, sizeClass, howMany] as const,
    ),
    beds: garden.beds.map(({ bed, walk, station }) => [bed, walk ?? 0, station] as const),
    doses: Object.fromEntries(
      garden.doses
        .filter(({ sizeClass }) => withPlants.has(sizeClass))
        .map(({ sizeClass, dose }) => [sizeClass, dose ?? 0]),
    ),
    ...(barrel === '' ? {} : { barrel }),
    seconds: garden.timedBuckets,
    products: garden.products.map(
      ({ name, form, greatestRate }) => [name, form, measured(greatestRate)] as const,
    ),
    mix: garden.mix.map(({ product, rate }) => [product, measured(rate)] as const),
    ...(card === undefined
      ? {}
      : {
          card: {
            day: dayOfSerial(card.date),
            mix: card.mix,
            plants: card.plants,
            products: card.products.map(({ product }) => product),
          },
        }),
    log: log.rounds
      .map(({ date, leftOver, notes }) => ({ day: dayOfSerial(date), leftOver, notes }))
      .toReversed(),
  };
  return { kept, unread: [...garden.problems.map(({ sentence }) => sentence), ...log.problems] };
};

/** The user's own cells that are not as they were typed. */
const ownLost = (cells: Cells, own: OwnCells): string[] =>
  Object.entries(own).flatMap(([place, typed]) => {
    const cell = cells.get(place);
    const found = cell?.formula ?? cell?.value ?? null;
    return found === typed ? [] : [`${place}: ${typed} is ${found}`];
  });

/**
 * Cells with an entry that is not there any more, or is another one now. Formulas are the program's to mend, and so is
 * all of the card.
 */
const entriesLost = (before: Cells, after: Cells, card: string | undefined): string[] =>
  [...before].flatMap(([place, { value, formula }]) => {
    if (formula !== undefined || place.startsWith(`${card}!`)) return [];
    const now = after.get(place)?.value ?? null;
    return now === value ? [] : [`${place}: ${value} is ${now}`];
  });

export interface Left {
  /** Entries that changed, and cells of the user's own that did: "Rig!B5: 60 is 55". */
  readonly lost: readonly string[];
  /** What could not be read, in the sentences that the user is told. */
  readonly unread: readonly string[];
  readonly kept: Kept;
}

/**
 * What a workbook holds, against its cells as it was opened.
 *
 * @param own the cells of the user's own, those on the card's sheet too
 */
export const leftIn = async (workbook: Workbook, opened: Cells, own: OwnCells): Promise<Left> => {
  const cells = await cellsIn(workbook);
  const card = areaNamed(await workbook.outline(), CARD)?.sheet;
  const { kept, unread } = await readAsKept(workbook);
  const lost = [...entriesLost(opened, cells, card), ...ownLost(cells, own)];
  return { lost, unread, kept: { own, ...kept } };
};
