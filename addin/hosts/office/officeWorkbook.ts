import type { Change } from '../../workbook/change';
import type { Outline, Snapshot, Wanted, Workbook } from '../../workbook/port';
import { areasWanted } from '../../workbook/seen';
import { validateAreas } from '../../workbook/validateChange';

import { applyChange } from './applyChange';
import { bookAt } from './bookAt';
import type { ExcelProgram } from './excelProgram';
import { failure } from './failures';
import { readBlocks } from './read/readBlocks';
import { askAgain, readOutline, type KnownBook } from './read/readOutline';
import { settled, type Glance } from './read/settled';

export interface OfficeWorkbook extends Workbook {
  /** True while the program writes, so that its own writing is not taken for the user's. */
  readonly writing: boolean;
}

const NOT_READ = 'The workbook could not be read';

const outlineOf = ({ sheets, names, active }: KnownBook): Outline => ({ sheets, names, active });

/** The workbook port on a program that loads Office Add-ins. */
export const officeWorkbook = (program: ExcelProgram): OfficeWorkbook => {
  let writing = false;

  /** What the cells hold; looked at again where the user moved any while the program answered. */
  const look = async (wanted: Wanted): Promise<Snapshot & Glance> => {
    const seen = await program.run(
      async (context) => {
        const book = await readOutline(context);
        const at = bookAt(context, book.ids);
        const areas = areasWanted(wanted, outlineOf(book));
        validateAreas(areas, book);
        const blocks = await readBlocks(at, book, areas);
        const { application } = context.workbook;
        application.load('calculationState');
        const stands = askAgain(at, book);
        await context.sync();
        const calculating = application.calculationState === 'Calculating';
        return stands() ? { ...outlineOf(book), blocks, calculating } : undefined;
      },
      { waitForCell: true },
    );
    return seen ?? look(wanted);
  };

  return {
    get writing() {
      return writing;
    },
    outline: async (): Promise<Outline> => {
      try {
        return outlineOf(await program.run(readOutline, { waitForCell: true }));
      } catch (error) {
        throw failure(error, NOT_READ);
      }
    },
    read: async (wanted: Wanted): Promise<Snapshot> => {
      try {
        const { sheets, names, active, blocks } = await settled(() => look(wanted));
        return { sheets, names, active, blocks };
      } catch (error) {
        throw failure(error, NOT_READ);
      }
    },
    apply: async (change: Change, seen?: Snapshot): Promise<void> => {
      writing = true;
      try {
        await applyChange(program, change, seen);
      } finally {
        writing = false;
      }
    },
  };
};
