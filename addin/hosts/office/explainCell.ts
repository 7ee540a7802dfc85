import type { FeedCall } from '../../../functions';
import { explained } from '../../../taskpane/explained';
import type { CellExplanation } from '../../../taskpane/services';
import { feedSpelling } from '../../workbook/feedSpelling';
import type { Workbook } from '../../workbook/port';

import type { ExcelProgram } from './excelProgram';
import { isFormula } from './read/cellState';
import type { RecentCalls } from './recentCalls';

/** How long a cell may take to ask its functions anew, and how long between two looks, ms. */
const PATIENCE = 2_000;
const PAUSE = 50;

const NOT_YET =
  'To see how it was worked out, go into the cell and press Enter, so that it is calculated anew.';
/** As a cell shows an error; a number that its column has no room for is shown in number signs. */
const ERROR = /^#[A-Z]/;
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

/** Why the selected cell shows what it shows. Undefined where the cell holds no formula. */
export const explainSelected = async (
  program: ExcelProgram,
  workbook: Workbook,
  recent: RecentCalls,
): Promise<CellExplanation | undefined> => {
  const { address, formula, ...at } = await selected(program);
  if (formula === undefined) return undefined;
  const asks = formula.match(FEED)?.length ?? 0;
  const known = asks === 0 ? [] : recent.of(address);
  const made = asks > 0 && known.length === 0 ? await calledAnew(program, recent, address) : known;
  const calls = made.slice(-asks);
  return explained(
    workbook,
    { ...at, formula, failed: ERROR.test(at.shows) },
    { calls, ...(asks > 0 && calls.length === 0 ? { instead: NOT_YET } : {}) },
  );
};
