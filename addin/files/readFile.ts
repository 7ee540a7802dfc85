import type { FileBook, FileListener } from './fileBook';
import { guardXlsx } from './guardFile';

/**
 * Reads a spreadsheet file: .xlsx, or a list of values as text. Its cells are told page by page on the way, the rest is
 * the answer. Nothing is computed.
 *
 * @throws FileRefused with a plain sentence
 */
export const readFile = async (
  name: string,
  bytes: Uint8Array,
  listener: FileListener,
): Promise<FileBook> => {
  if (/\.(csv|tsv|txt)$/i.test(name)) {
    const { readText } = await import(/* webpackMode: "eager" */ './readText');
    return readText(name, bytes, listener);
  }
  await guardXlsx(name, bytes);
  const { readXlsx } = await import(/* webpackMode: "eager" */ './readXlsx');
  return readXlsx(name, bytes, listener);
};
