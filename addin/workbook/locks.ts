import type { Edit } from './change';
import { WorkbookError } from './port';

/** What a change needs to find unlocked. */
export interface Touched {
  /** False where the change only goes to a cell. */
  readonly workbook: boolean;
  /** True where it adds a sheet. */
  readonly structure: boolean;
  /** Every sheet that it changes, once; sheets that it adds are among them. */
  readonly sheets: readonly string[];
}

/** Locks that stand in the way of a change, and no others. */
export interface Locks {
  /** The workbook is open for reading only. */
  readonly readOnly: boolean;
  /** The workbook's structure is protected. */
  readonly structure: boolean;
  /** Sheets that are protected. */
  readonly sheets: readonly string[];
}

const READ_ONLY =
  'This workbook is open for reading only. Open it for editing, or save a copy and open that, then try again.';
const NO_NEW_SHEETS =
  "The workbook's structure is protected, so no sheet can be added. Take the protection off, then try again.";

const areProtected = (names: readonly string[]): string =>
  names.length === 1
    ? `The sheet “${names[0]}” is protected. Take the protection off, then try again.`
    : `The sheets ${names.map((name) => `“${name}”`).join(', ')} are protected. Take the protection off, then try again.`;

/** The sheet that an edit changes; undefined for one that changes none. */
const changedSheet = (edit: Edit): string | undefined => {
  switch (edit.kind) {
    case 'format':
    case 'style':
    case 'wrap':
    case 'merge':
    case 'list':
    case 'page':
      return edit.area.sheet;
    case 'write':
    case 'width':
    case 'freeze':
    case 'note':
    case 'chart':
      return edit.sheet;
    case 'addSheet':
    case 'name':
    case 'activate':
      return undefined;
  }
};

/** What a host looks at before it writes the edits. */
export const touchedBy = (edits: readonly Edit[]): Touched => ({
  workbook: edits.some(({ kind }) => kind !== 'activate'),
  structure: edits.some(({ kind }) => kind === 'addSheet'),
  sheets: [...new Set(edits.flatMap((edit) => changedSheet(edit) ?? []))],
});

/**
 * Refuses a change that the workbook would not take, or would take only in part.
 *
 * @throws WorkbookError that says which lock it is and what to do
 */
export const refuseLocked = ({ readOnly, structure, sheets }: Locks): void => {
  if (readOnly) throw new WorkbookError(READ_ONLY);
  if (structure) throw new WorkbookError(NO_NEW_SHEETS);
  if (sheets.length > 0) throw new WorkbookError(areProtected(sheets));
};
