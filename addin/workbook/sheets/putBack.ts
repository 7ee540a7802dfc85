import { andList } from '../fields/holds';

/** What was put back of what the user had taken away, as a sentence; none where nothing was. */
export const putBackWords = (made: readonly string[]): readonly string[] =>
  made.length === 0 ? [] : [`Put back ${andList(made)}.`];
