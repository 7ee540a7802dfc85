import type { ColumnGuess, Meaning } from './adoption';
import { readHeading } from './headings';

/** Where each meaning stands; undefined where no column has it. */
export interface ListColumns {
  readonly plant?: ColumnGuess;
  readonly bed?: ColumnGuess;
  readonly class?: ColumnGuess;
  readonly size?: ColumnGuess;
  readonly pot?: ColumnGuess;
  readonly count?: ColumnGuess;
  /** Columns kept as notes, with what stands before their values: 'Year: ', or nothing under 'Notes'. */
  readonly notes: readonly { readonly column: ColumnGuess; readonly label: string }[];
}

/** Sorts the columns by meaning; a second column of one meaning is kept as notes. */
export const byMeaning = (columns: readonly ColumnGuess[]): ListColumns => {
  const first = new Map<Meaning, ColumnGuess>();
  const notes: { column: ColumnGuess; label: string }[] = [];
  for (const column of columns) {
    if (column.meaning === 'leftOut') continue;
    if (column.meaning !== 'notes' && !first.has(column.meaning)) {
      first.set(column.meaning, column);
      continue;
    }
    const plain = column.header === '' || readHeading(column.header)?.weights.notes === 1;
    notes.push({ column, label: plain ? '' : `${column.header.replace(/[\s:]+$/, '')}: ` });
  }
  return { ...Object.fromEntries(first), notes };
};
