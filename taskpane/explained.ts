import { tellCall, type FeedCall } from '../functions';
import { faultyCell, placeInWords, type CellPlace } from '../addin/workbook/faultyCell';
import type { Workbook } from '../addin/workbook/port';

import type { CellExplanation } from './services';

/** The selected cell as a host sees it. */
export interface SelectedCell extends CellPlace {
  /** English names, commas, leading '='. */
  readonly formula: string;
  /** The formula as the user types it, where his program spells it in another way. */
  readonly typed?: string;
  readonly shows: string;
  /** True where it shows an error. */
  readonly failed: boolean;
}

export interface Known {
  /** What the formula asked of the functions, in its order. */
  readonly calls: readonly FeedCall[];
  /** Why the cell has no value, where the host knows of something that none of its calls tells. */
  readonly why?: string;
  /** What stands in the place of the working where the calls are not known. */
  readonly instead?: string;
}

const passedOn = async (workbook: Workbook, cell: SelectedCell): Promise<string | undefined> => {
  const faulty = await faultyCell(workbook, cell, cell.formula);
  return faulty === undefined
    ? undefined
    : `${placeInWords(faulty, cell.sheet)} shows an error, and this formula uses it. Put that cell right first.`;
};

/**
 * Why a cell shows what it shows: the sentence of a FEED function that refused, else the cell that an error comes
 * from; and every FEED computation in it told in steps.
 */
export const explained = async (
  workbook: Workbook,
  cell: SelectedCell,
  { calls, why, instead }: Known,
): Promise<CellExplanation> => {
  const { sheet, row, column, formula, typed = formula, shows, failed } = cell;
  const refused = calls
    .map(({ outcome }) => ('error' in outcome ? outcome.sentence : undefined))
    .find((sentence) => sentence !== undefined);
  const sentence = failed ? (why ?? refused ?? (await passedOn(workbook, cell))) : undefined;
  return {
    sheet,
    row,
    column,
    formula: typed,
    shows,
    ...(sentence === undefined ? {} : { sentence }),
    working: instead === undefined ? calls.flatMap(({ name, args }) => tellCall(name, args)) : [instead],
  };
};
