import { faultyCell, placeInWords } from '../../addin/workbook/faultyCell';
import { cellsRead } from '../../addin/workbook/formula/reads';
import { treeOf } from '../../addin/workbook/formula/tree';
import type { CellState, Workbook } from '../../addin/workbook/port';

import type { SelectedCell } from '../services';
import { callInWords } from './callInWords';
import { cellsInWords, heldInWords } from './cellsInWords';
import { readCells, type CellsHeld } from './cellValues';
import { asNumber, isError, isRows } from './spreadsheetFunctions';
import { workOut, type FeedCall, type Worth } from './workOut';

/** Why the selected cell shows what it shows. */
export interface CellExplanation {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  /** The cell's formula as the user types it, with its leading '='. */
  readonly formula: string;
  /** What the cell shows, as it shows it. */
  readonly shows: string;
  /** Why it shows an error: a plain sentence. */
  readonly sentence?: string;
  /** The cells that go in otherwise than through a FEED function, with what they hold. */
  readonly cells: readonly string[];
  /** The FEED functions told in steps, with where their arguments come from, units and source. */
  readonly working: readonly string[];
}

/** True where what was worked out here is what the cell holds. */
const agrees = ({ value }: Worth, cell: CellState): boolean => {
  if (value === undefined) return true;
  if (isError(value) || cell.error !== undefined) return isError(value) && cell.error !== undefined;
  const held = cell.value ?? '';
  return (isRows(value) ? value.flat() : [value]).some((one) => {
    if (typeof one === 'string' && one !== '') return one === held;
    const [a, b] = [asNumber(one), asNumber(held)];
    return a !== undefined && b !== undefined && Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(a));
  });
};

const refusalOf = (calls: readonly FeedCall[]): string | undefined =>
  calls
    .map(({ outcome }) => (outcome && 'error' in outcome ? outcome.sentence : undefined))
    .find((sentence) => sentence !== undefined);

const passedOn = async (
  workbook: Workbook,
  at: SelectedCell,
  formula: string,
): Promise<string | undefined> => {
  const faulty = await faultyCell(workbook, at, formula);
  return (
    faulty &&
    `${placeInWords(faulty, at.sheet)} shows an error, and this formula uses it. Put that cell right first.`
  );
};

const NOT_FOLLOWED = 'Part of this formula cannot be followed here, so only its cells are told.';
const NOT_AGREED = 'How it was worked out is not told, because it comes to something else here.';

/** What goes into the formula, and by which steps. */
const told = (formula: string, held: readonly CellsHeld[], cell: CellState) => {
  const tree = treeOf(formula);
  const worth = tree && workOut(tree, new Map(held.map((cells) => [cells.text, cells])));
  const sure = worth !== undefined && agrees(worth, cell);
  const note = worth === undefined ? [NOT_FOLLOWED] : sure || cell.error !== undefined ? [] : [NOT_AGREED];
  return { calls: sure ? worth.calls : [], cells: sure ? worth.cells : held, note };
};

/**
 * Why a cell shows what it shows: what the host knows of it, else the sentence of a FEED function that refused, else
 * the cell that an error comes from; and how it was worked out. What cannot be followed for sure is told by the cells
 * that go in.
 *
 * @returns undefined where the cell holds no formula
 */
export const explainCell = async (
  workbook: Workbook,
  at: SelectedCell,
): Promise<CellExplanation | undefined> => {
  const { sheet, row, column, shows, why } = at;
  const snapshot = await workbook.read([{ sheet, row, column, rows: 1, columns: 1 }]);
  const cell = snapshot.blocks[0]!.cells[0]![0]!;
  const { formula } = cell;
  if (formula === undefined) return undefined;
  const { calls, cells, note } = told(
    formula,
    await readCells(workbook, cellsRead(formula, sheet, snapshot)),
    cell,
  );
  const sentence =
    cell.error === undefined
      ? undefined
      : (why ?? refusalOf(calls) ?? (await passedOn(workbook, at, formula)));
  return {
    sheet,
    row,
    column,
    formula: at.typed ?? formula,
    shows,
    ...(sentence === undefined ? {} : { sentence }),
    cells: cells.map((each) => `${cellsInWords(each, sheet)}: ${heldInWords(each)}`),
    working: [...calls.flatMap((call) => callInWords(call, sheet)), ...note],
  };
};
