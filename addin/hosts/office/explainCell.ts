import { tellCall } from '../../../functions';
import type { CellExplanation } from '../../../taskpane/services';
import { feedSpelling } from '../../workbook/feedSpelling';

import type { ExcelProgram } from './excelProgram';
import { isFormula } from './read/cellState';
import type { FeedCall, RecentCalls } from './recentCalls';

/** How long a cell may take to ask its functions anew, and how long between two looks, ms. */
const PATIENCE = 2_000;
const PAUSE = 50;

const NOT_YET =
  'To see how it was worked out, go into the cell and press Enter, so that it is calculated anew.';
const FEED = /\bFEED\.[A-Z]+(?=\s*\()/g;

interface Selected {
  readonly address: string;
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly formula: string | undefined;
  readonly shows: string;
}

const selected = (program: ExcelProgram): Promise<Selected> =>
  program.run(
    async (context) => {
      const cell = context.workbook.getActiveCell();
      cell.load('address,rowIndex,columnIndex,formulas,values,text');
      const { worksheet } = cell;
      worksheet.load('name');
      await context.sync();
      const formula: unknown = cell.formulas[0]?.[0];
      return {
        address: cell.address,
        sheet: worksheet.name,
        row: cell.rowIndex,
        column: cell.columnIndex,
        formula: isFormula(formula, cell.values[0]?.[0]) ? feedSpelling(formula) : undefined,
        shows: (cell.text[0]?.[0] ?? '').trim(),
      };
    },
    { waitForCell: true },
  );

/** Has the program calculate the selected cell anew, which changes nothing in it, and waits for its calls. */
const calledAnew = async (
  program: ExcelProgram,
  recent: RecentCalls,
  address: string,
): Promise<readonly FeedCall[]> => {
  await program.run(
    async (context) => {
      context.workbook.getActiveCell().setDirty();
      context.workbook.application.calculate('Recalculate');
      await context.sync();
    },
    { waitForCell: true },
  );
  for (let waited = 0; waited < PATIENCE && recent.of(address).length === 0; waited += PAUSE)
    await new Promise((resolve) => setTimeout(resolve, PAUSE));
  return recent.of(address);
};

/**
 * Why the selected cell shows what it shows: the sentence of a FEED function that refused, and every FEED computation
 * in it told in steps. Undefined where the cell holds no formula.
 */
export const explainSelected = async (
  program: ExcelProgram,
  recent: RecentCalls,
): Promise<CellExplanation | undefined> => {
  const { address, sheet, row, column, formula, shows } = await selected(program);
  if (formula === undefined) return undefined;
  const asks = formula.match(FEED)?.length ?? 0;
  const known = asks === 0 ? [] : recent.of(address);
  const calls = asks > 0 && known.length === 0 ? await calledAnew(program, recent, address) : known;
  const told = calls.slice(-asks);
  const refused = told
    .map(({ outcome }) => ('error' in outcome ? outcome.sentence : undefined))
    .find(Boolean);
  return {
    sheet,
    row,
    column,
    formula,
    shows,
    ...(refused && shows.startsWith('#') ? { sentence: refused } : {}),
    working:
      asks > 0 && told.length === 0 ? [NOT_YET] : told.flatMap(({ name, args }) => tellCall(name, args)),
  };
};
