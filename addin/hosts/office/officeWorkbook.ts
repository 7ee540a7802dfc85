import type { Area, Change } from '../../workbook/change';
import type { Outline, Snapshot, Workbook } from '../../workbook/port';
import { validateAreas } from '../../workbook/validateChange';

import { applyChange } from './applyChange';
import { bookAt } from './bookAt';
import type { ExcelProgram } from './excelProgram';
import { failure } from './failures';
import { readBlocks } from './read/readBlocks';
import { readOutline, type KnownBook } from './read/readOutline';
import { settled } from './read/settled';

export interface OfficeWorkbook extends Workbook {
  /** True while the program writes, so that its own writing is not taken for the user's. */
  readonly writing: boolean;
}

const NOT_READ = 'The workbook could not be read';

const outlineOf = ({ sheets, names, active }: KnownBook): Outline => ({ sheets, names, active });

/** The workbook port on a program that loads Office Add-ins. */
export const officeWorkbook = (program: ExcelProgram): OfficeWorkbook => {
  let writing = false;

  const look = (areas: readonly Area[]) =>
    program.run(
      async (context) => {
        const book = await readOutline(context);
        validateAreas(areas, book);
        const { application } = context.workbook;
        application.load('calculationState');
        const blocks = await readBlocks(bookAt(context, book.ids), book, areas);
        await context.sync();
        return { ...outlineOf(book), blocks, calculating: application.calculationState === 'Calculating' };
      },
      { waitForCell: true },
    );

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
    read: async (areas: readonly Area[]): Promise<Snapshot> => {
      try {
        const { sheets, names, active, blocks } = await settled(() => look(areas));
        return { sheets, names, active, blocks };
      } catch (error) {
        throw failure(error, NOT_READ);
      }
    },
    apply: async (change: Change): Promise<void> => {
      writing = true;
      try {
        await applyChange(program, change);
      } finally {
        writing = false;
      }
    },
  };
};
