import { FileRefused } from './fileRefused';
import { packedBytes, unpackedSize, zipEntries, type ZipEntry } from './zipEntries';

const MEGABYTE = 1_048_576;
/** Largest file, and largest that it may unpack to. A hundred thousand rows of roses take about a tenth of it. */
const LARGEST_FILE = 60 * MEGABYTE;
const LARGEST_UNPACKED = 400 * MEGABYTE;
const MOST_ENTRIES = 5_000;
/** Sheets of plain text pack to about a twentieth; what packs a thousandfold is made to burst. */
const STRANGEST_RATIO = 1_000;

const startsWith = (bytes: Uint8Array, ...signature: number[]): boolean =>
  signature.every((byte, index) => bytes[index] === byte);

/** Excel's files before 2007, and its newer ones under a password, share this beginning. */
const isCompound = (bytes: Uint8Array): boolean => startsWith(bytes, 0xd0, 0xcf, 0x11, 0xe0);
const isZip = (bytes: Uint8Array): boolean => startsWith(bytes, 0x50, 0x4b);

const megabytes = (size: number): string => `${Math.round(size / MEGABYTE).toLocaleString('en')} MB`;

const kindRefusal = (name: string, bytes: Uint8Array): string | undefined => {
  if (bytes.length === 0) return `“${name}” is empty; there is nothing in it to open.`;
  if (bytes.length > LARGEST_FILE)
    return `“${name}” has ${megabytes(bytes.length)}; files of at most ${megabytes(LARGEST_FILE)} are opened here.`;
  if (isCompound(bytes))
    return `“${name}” is protected with a password, or is a spreadsheet of the old .xls kind. Save it without a password as .xlsx and open that.`;
  if (!isZip(bytes)) return `“${name}” is not an .xlsx spreadsheet, whatever its name says.`;
  return undefined;
};

const zipRefusal = (name: string, entries: readonly ZipEntry[]): string | undefined => {
  const has = (wanted: string): boolean => entries.some((entry) => entry.name.toLowerCase() === wanted);
  const unpacked = entries.reduce((sum, entry) => sum + entry.unpacked, 0);
  if (entries.some((entry) => entry.locked))
    return `“${name}” is protected with a password. Save it without one and open that.`;
  if (
    entries.length > MOST_ENTRIES ||
    unpacked > LARGEST_UNPACKED ||
    entries.some((entry) => entry.unpacked > MEGABYTE && entry.unpacked > entry.packed * STRANGEST_RATIO)
  )
    return `“${name}” would unpack to ${megabytes(unpacked)} in ${entries.length} parts. That is no ordinary spreadsheet, so it was not opened.`;
  if (has('content.xml') && has('mimetype'))
    return `“${name}” is an OpenDocument spreadsheet. Save it as .xlsx in your spreadsheet program, and open that here.`;
  if (has('xl/workbook.bin'))
    return `“${name}” is a binary spreadsheet (.xlsb). Save it as .xlsx and open that.`;
  if (!has('[content_types].xml') || !has('xl/workbook.xml'))
    return `“${name}” is a packed file, and not an .xlsx spreadsheet, whatever its name says.`;
  return undefined;
};

/**
 * Refuses what cannot or should not be opened as .xlsx, before anything is unpacked into memory: empty files,
 * passwords, other kinds of file, damage, and files made to burst on unpacking.
 */
export const guardXlsx = async (name: string, bytes: Uint8Array): Promise<void> => {
  const kind = kindRefusal(name, bytes);
  if (kind) throw new FileRefused(kind);
  const entries = zipEntries(bytes, name);
  const refusal = zipRefusal(name, entries);
  if (refusal) throw new FileRefused(refusal);
  for (const entry of entries) {
    const packed = packedBytes(bytes, entry, name);
    const size = entry.method === 0 ? packed.length : await unpackedSize(packed, entry.unpacked);
    if (size === 'more')
      throw new FileRefused(`“${name}” unpacks to more than it says, so it was not opened.`);
    if (size !== entry.unpacked)
      throw new FileRefused(
        `“${name}” is cut off or damaged, so it was not opened. Fetch or save it once more.`,
      );
  }
};
