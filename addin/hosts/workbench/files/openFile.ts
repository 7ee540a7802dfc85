import type { FileListener } from '../../../files/fileBook';
import { FileRefused } from '../../../files/fileRefused';
import { readBeside, type Beside } from '../../../files/readBeside';
import type { BookData } from '../grid/bookData';
import { gridBook } from './gridBook';
import { renameSheets, type Renamed } from './renamedSheets';

/** A file as it was opened. */
export interface OpenedFile {
  readonly book: BookData;
  /** The sheet that was on top when it was saved. */
  readonly active: string;
  /** What the file holds and the grid does not keep, in words: "2 pictures". */
  readonly left: readonly string[];
  readonly renamed: readonly Renamed[];
}

/**
 * Reads a spreadsheet file (.xlsx, or a list of values as text) beside the page.
 *
 * @param bytes are empty afterwards
 * @throws FileRefused with a plain sentence; nothing has then been changed
 */
export const openFile = async (
  name: string,
  bytes: Uint8Array<ArrayBuffer>,
  progress: FileListener['progress'] = () => undefined,
  how: Beside = {},
): Promise<OpenedFile> => {
  const made = gridBook();
  const file = await readBeside(name, bytes, { rows: made.rows, progress }, how);
  const { book, renamed } = renameSheets(made.book(file));
  return {
    book,
    renamed,
    left: file.left,
    active: renamed.find(({ from }) => from === file.active)?.to ?? file.active,
  };
};

/** What a failure to open a file says to the user. */
export const sayRefusal = (name: string, reason: unknown): string =>
  reason instanceof FileRefused
    ? reason.message
    : `“${name}” could not be opened (${reason instanceof Error ? reason.message : String(reason)}).`;
