import type { Edit } from '../../../workbook/change';
import type { BookAt } from '../bookAt';
import type { ExcelProgram } from '../excelProgram';
import type { KnownBook } from '../read/readOutline';

import { prepareCells } from './cells';
import { prepareCharts } from './charts';
import { prepareFreezes } from './freezes';
import { prepareLists } from './lists';
import { prepareLooks } from './looks';
import { prepareNames } from './names';
import { prepareNotes } from './notes';
import { preparePages } from './pages';
import type { Prepare, Prepared } from './prepared';
import { prepareActive, prepareSheets } from './sheets';
import { prepareWidths } from './widths';

/**
 * The order in which the program needs them: sheets and names before what uses them, looks after the cells they lie
 * on, and late what does not wholly come back, the page set-up. They are put back from the last to the first.
 */
const IN_ORDER: readonly Prepare[] = [
  prepareSheets,
  prepareNames,
  prepareCells,
  prepareLooks,
  prepareWidths,
  prepareFreezes,
  prepareLists,
  prepareNotes,
  prepareCharts,
  preparePages,
  prepareActive,
];

/** Reads everything that the edits overwrite, and tells how they are written and how they are put back. */
export const prepareEdits = async (
  { supports }: ExcelProgram,
  at: BookAt,
  book: KnownBook,
  edits: readonly Edit[],
): Promise<Required<Prepared>> => {
  const over = edits.filter((edit) => book.ids.has('area' in edit ? edit.area.sheet : edit.sheet));
  const prepared: Prepared[] = [];
  for (const prepare of IN_ORDER) prepared.push(await prepare({ at, book, supports, edits, over }));
  return {
    pieces: prepared.flatMap(({ pieces }) => pieces),
    last: prepared.flatMap(({ last = [] }) => last),
    putBack: prepared.reverse().flatMap(({ putBack }) => putBack),
  };
};
