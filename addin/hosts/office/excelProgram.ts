import { oneUndo } from './later/oneUndo';

/** What a batch asks of the program besides its work. */
export interface BatchOptions {
  /** Everything in the batch is one step of the undo, where the program can. */
  readonly oneUndo?: boolean;
  /** The batch waits while the user edits a cell; without it, it is refused. */
  readonly waitForCell?: boolean;
}

/** The program that the add-in runs in, as much of it as the workbook port needs. */
export interface ExcelProgram {
  run<T>(batch: (context: Excel.RequestContext) => Promise<T>, options?: BatchOptions): Promise<T>;
  /** Whether the program has a version of the set ExcelApi. */
  supports(version: string): boolean;
}

const supports = (version: string): boolean =>
  Office.context.requirements.isSetSupported('ExcelApi', version);

/** The program of this page. */
export const thisProgram: ExcelProgram = {
  supports,
  run: (batch, { oneUndo: grouped = false, waitForCell = false } = {}) =>
    Excel.run({ delayForCellEdit: waitForCell, ...(grouped ? oneUndo(supports) : {}) }, batch),
};
