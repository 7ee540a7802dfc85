import type { Change } from '../../workbook/change';
import { refuseLocked } from '../../workbook/locks';
import { WorkbookError, WorkbookMoved, type Snapshot } from '../../workbook/port';
import { isAsSeen, seenAreas } from '../../workbook/seen';
import { refuseNewer, shapeAreas } from '../../workbook/shapes';
import { validateChange } from '../../workbook/validateChange';

import { bookAt, type BookAt } from './bookAt';
import type { PutBack } from './edits/prepared';
import { prepareEdits } from './edits/prepareEdits';
import { send, type Piece } from './edits/piece';
import type { ExcelProgram } from './excelProgram';
import { codeOf, failure, sentenceOf } from './failures';
import { locksOn } from './locks';
import { readBlocks } from './read/readBlocks';
import { askAgain, readOutline, type KnownBook } from './read/readOutline';

/** What is to be written, and how to put back what it overwrites. */
interface Plan {
  readonly book: KnownBook;
  readonly pieces: readonly Piece[];
  readonly putBack: readonly PutBack[];
}

/** The program cannot compare and write at once: what is edited after this answer and before the writing is not noticed. */
const refuseEdited = async (at: BookAt, book: KnownBook, seen: Snapshot): Promise<void> => {
  const stands = askAgain(at, book);
  const blocks = await readBlocks(at, book, seenAreas(seen, book));
  await at.context.sync();
  if (!stands() || !isAsSeen(seen, { ...book, blocks })) throw new WorkbookMoved();
};

const prepare = (
  program: ExcelProgram,
  { edits, ...change }: Change,
  seen: Snapshot | undefined,
): Promise<Plan | undefined> =>
  program.run(async (context) => {
    const book = await readOutline(context);
    if (seen && !isAsSeen(seen, { ...book, blocks: seen.blocks })) throw new WorkbookMoved();
    validateChange({ ...change, edits }, book);
    if (edits.length === 0) return undefined;
    const at = bookAt(context, book.ids);
    refuseNewer({ ...change, edits }, { ...book, blocks: await readBlocks(at, book, shapeAreas(book)) });
    refuseLocked(await locksOn(at, book, edits));
    const { pieces, last, putBack: back } = await prepareEdits(program, at, book, edits);
    if (seen) await refuseEdited(at, book, seen);
    return { book, pieces: [...pieces, ...last], putBack: back };
  });

const write = (program: ExcelProgram, { book, pieces }: Plan, oneUndo: boolean): Promise<void> =>
  program.run((context) => send(bookAt(context, book.ids), pieces), { oneUndo });

/**
 * Puts back what was overwritten, step by step, because what was not begun cannot be taken back; returns whether the
 * workbook is as it was.
 */
const putBack = async (program: ExcelProgram, plan: Plan, cause: unknown): Promise<boolean> => {
  let whole = true;
  for (const work of plan.putBack) {
    try {
      await program.run((context) => work(bookAt(context, plan.book.ids), cause));
    } catch (error) {
      // A note, a name or a chart that was never made is as good as taken back.
      if (codeOf(error) !== 'ItemNotFound') whole = false;
    }
  }
  return whole;
};

/**
 * Writes a change whole or not at all: it is checked first, locks and all; what it overwrites is read; last it is looked
 * whether all that was seen still stands; and where a part is refused all the same, what was begun is put back.
 *
 * @throws WorkbookError that says what did not happen, why, and how the workbook stands
 */
export const applyChange = async (program: ExcelProgram, change: Change, seen?: Snapshot): Promise<void> => {
  const what = `“${change.title}” could not be written`;
  let plan: Plan | undefined;
  try {
    plan = await prepare(program, change, seen);
  } catch (error) {
    throw failure(error, what, 'the workbook stays as it was');
  }
  if (!plan) return;
  const attempt = async (ready: Plan, oneUndo: boolean): Promise<void> => {
    try {
      await write(program, ready, oneUndo);
    } catch (error) {
      if (!(await putBack(program, ready, error))) {
        const reason = sentenceOf(error);
        const told = `${what}, and part of it could not be taken back. Take the last pieces back with the program's own Undo.`;
        throw new WorkbookError(reason ? `${reason} ${told}` : told, { cause: error });
      }
      // Some programs group no steps over the adding of a sheet.
      if (oneUndo && codeOf(error) === 'UndoNotSupported') return attempt(ready, false);
      throw failure(error, what, 'the workbook stays as it was');
    }
  };
  await attempt(plan, true);
};
