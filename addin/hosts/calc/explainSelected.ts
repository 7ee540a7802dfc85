import { NAMESPACE, tellCall, type RawArgument } from '../../../functions';
import type { CellExplanation } from '../../../taskpane/services';
import type { Workbook } from '../../workbook/port';
import type { Ask } from './calcWorkbook';
import { feedCalls, type FeedCall } from './formulaCalls';
import { NotUnderstood, partsOf } from './formulaParts';

/** What the component tells of the selected cell. */
interface SelectedCell {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly formula: string;
  readonly shows: string;
  /** True where the cell shows an error. */
  readonly failed: boolean;
}

const HOLDS_OURS = new RegExp(`\\b${NAMESPACE}\\.`, 'i');
const TOO_MUCH =
  'An argument of this formula is more than can be told here; put it into a cell of its own to see the working.';

const callsOf = async (
  cell: SelectedCell,
  workbook: Workbook,
  ask: Ask,
): Promise<readonly FeedCall[] | undefined> => {
  const compute = async (name: string, args: readonly RawArgument[]): Promise<RawArgument> => {
    try {
      return (await ask({ what: 'compute', name, args })) as RawArgument;
    } catch (cause) {
      throw new NotUnderstood(name, { cause });
    }
  };
  try {
    return await feedCalls(partsOf(cell.formula), cell.sheet, workbook, compute);
  } catch (error) {
    if (error instanceof NotUnderstood) return undefined;
    throw error;
  }
};

/**
 * Why the selected cell shows what it shows: the sentence of a FEED function that refused, and every FEED
 * computation in it told in steps. Undefined where the cell holds no formula.
 */
export const explainSelected = async (workbook: Workbook, ask: Ask): Promise<CellExplanation | undefined> => {
  const cell = (await ask({ what: 'selected' })) as SelectedCell | null;
  if (cell === null) return undefined;
  const { sheet, row, column, formula, shows, failed } = cell;
  const told = { sheet, row, column, formula, shows };
  if (!HOLDS_OURS.test(formula)) return { ...told, working: [] };
  const calls = await callsOf(cell, workbook, ask);
  if (calls === undefined) return { ...told, working: [TOO_MUCH] };
  const refused = calls
    .map(({ outcome }) => ('error' in outcome ? outcome.sentence : undefined))
    .find(Boolean);
  return {
    ...told,
    ...(refused && failed ? { sentence: refused } : {}),
    working: calls.flatMap(({ name, args }) => tellCall(name, args)),
  };
};
