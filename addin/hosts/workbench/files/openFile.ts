import { FileRefused } from './fileRefused';
import { guardXlsx } from './guardFile';
import type { OpenedFile } from './readXlsx';
import { renameSheets, type Renamed } from './renamedSheets';

const readFile = async (name: string, bytes: Uint8Array): Promise<OpenedFile> => {
  if (/\.(csv|tsv|txt)$/i.test(name)) {
    const { readCsv } = await import('./readCsv');
    return readCsv(name, bytes);
  }
  await guardXlsx(name, bytes);
  const { readXlsx } = await import('./readXlsx');
  return readXlsx(name, bytes);
};

/**
 * Opens a spreadsheet file (.xlsx, or a .csv list). What reads it is fetched on demand.
 *
 * @throws FileRefused with a plain sentence; nothing has then been changed
 */
export const openFile = async (
  name: string,
  bytes: Uint8Array,
): Promise<OpenedFile & { readonly renamed: readonly Renamed[] }> => {
  const file = await readFile(name, bytes);
  const { book, renamed } = renameSheets(file.book);
  return {
    ...file,
    book,
    renamed,
    active: renamed.find(({ from }) => from === file.active)?.to ?? file.active,
  };
};

/** What a failure to open a file says to the user. */
export const sayRefusal = (name: string, reason: unknown): string =>
  reason instanceof FileRefused
    ? reason.message
    : `“${name}” could not be opened (${reason instanceof Error ? reason.message : String(reason)}).`;
