/** The set of the platform that groups the batches of a run into one step of the undo. */
export const NEEDS = '1.20';

/** The option that does so, where the program has it. Without it each batch is a step. */
export const oneUndo = (supports: (version: string) => boolean): Excel.RunOptions =>
  supports(NEEDS) ? { mergeUndoGroup: true } : {};
