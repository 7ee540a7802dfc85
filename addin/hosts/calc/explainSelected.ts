import { NAMESPACE, type FeedCall, type RawArgument } from '../../../functions';
import { explained, type Known, type SelectedCell } from '../../../taskpane/explained';
import type { CellExplanation } from '../../../taskpane/services';
import type { Workbook } from '../../workbook/port';
import { ComponentRefused } from './componentRefused';
import { feedCalls } from './formulaCalls';
import { NotUnderstood, partsOf } from './formulaParts';
import type { Ask } from './wire/requests';

const HOLDS_OURS = new RegExp(`\\b${NAMESPACE}\\.`, 'i');

const callsOf = (cell: SelectedCell, workbook: Workbook, ask: Ask): Promise<readonly FeedCall[]> =>
  feedCalls(partsOf(cell.formula), cell.sheet, workbook, async (name, args) => {
    try {
      return (await ask({ what: 'compute', name, args })) as RawArgument;
    } catch (error) {
      if (error instanceof ComponentRefused) return undefined;
      throw error;
    }
  });

const knownOf = async (cell: SelectedCell, workbook: Workbook, ask: Ask): Promise<Known> => {
  try {
    return { calls: HOLDS_OURS.test(cell.formula) ? await callsOf(cell, workbook, ask) : [] };
  } catch (error) {
    if (error instanceof NotUnderstood) return { calls: [], instead: error.message };
    throw error;
  }
};

/** Why the selected cell shows what it shows. Undefined where the cell holds no formula. */
export const explainSelected = async (workbook: Workbook, ask: Ask): Promise<CellExplanation | undefined> => {
  const told = await ask({ what: 'selected' });
  if (told === null) return undefined;
  const { absent, ...cell } = told;
  const why = absent === null ? {} : { why: absent };
  return explained(workbook, cell, { ...(await knownOf(cell, workbook, ask)), ...why });
};
