import { FileRefused } from './fileRefused';

/** One file in a zip, as its central directory declares it. */
export interface ZipEntry {
  readonly name: string;
  readonly packed: number;
  readonly unpacked: number;
  /** 0 stored, 8 deflated. */
  readonly method: number;
  readonly locked: boolean;
  /** Where its own header begins. */
  readonly start: number;
}

const END = 0x06054b50;
const CENTRAL = 0x02014b50;
const LOCAL = 0x04034b50;
const END_LENGTH = 22;
const CENTRAL_LENGTH = 46;
const LOCAL_LENGTH = 30;
/** A zip may end with a comment of this many bytes. */
const LONGEST_COMMENT = 0xffff;

const damaged = (name: string): FileRefused =>
  new FileRefused(`“${name}” is cut off or damaged, so it was not opened. Fetch or save it once more.`);

const endOf = (view: DataView): number | undefined => {
  const first = Math.max(0, view.byteLength - END_LENGTH - LONGEST_COMMENT);
  for (let at = view.byteLength - END_LENGTH; at >= first; at--)
    if (view.getUint32(at, true) === END) return at;
  return undefined;
};

/** The files in a zip, read from its directory alone: nothing is unpacked. */
export const zipEntries = (bytes: Uint8Array, name: string): ZipEntry[] => {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const end = endOf(view);
  if (end === undefined) throw damaged(name);
  const count = view.getUint16(end + 10, true);
  let at = view.getUint32(end + 16, true);
  const entries: ZipEntry[] = [];
  for (let number = 0; number < count; number++) {
    if (at + CENTRAL_LENGTH > view.byteLength || view.getUint32(at, true) !== CENTRAL) throw damaged(name);
    const nameLength = view.getUint16(at + 28, true);
    const text = bytes.subarray(at + CENTRAL_LENGTH, at + CENTRAL_LENGTH + nameLength);
    entries.push({
      name: new TextDecoder().decode(text),
      packed: view.getUint32(at + 20, true),
      unpacked: view.getUint32(at + 24, true),
      method: view.getUint16(at + 10, true),
      locked: (view.getUint16(at + 8, true) & 1) === 1,
      start: view.getUint32(at + 42, true),
    });
    at += CENTRAL_LENGTH + nameLength + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  }
  return entries;
};

/** The packed bytes of one file in a zip. */
export const packedBytes = (bytes: Uint8Array, entry: ZipEntry, name: string): Uint8Array<ArrayBuffer> => {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (entry.start + LOCAL_LENGTH > view.byteLength || view.getUint32(entry.start, true) !== LOCAL)
    throw damaged(name);
  const data =
    entry.start +
    LOCAL_LENGTH +
    view.getUint16(entry.start + 26, true) +
    view.getUint16(entry.start + 28, true);
  if (data + entry.packed > view.byteLength) throw damaged(name);
  return bytes.slice(data, data + entry.packed) as Uint8Array<ArrayBuffer>;
};

/** Unpacks one file only to count what comes out; gives up as soon as it is more than was declared. */
export const unpackedSize = async (
  packed: Uint8Array<ArrayBuffer>,
  most: number,
): Promise<number | 'more' | 'damaged'> => {
  const reader = new Blob([packed]).stream().pipeThrough(new DecompressionStream('deflate-raw')).getReader();
  let size = 0;
  try {
    for (;;) {
      const { done, value } = await reader.read();
      if (done) return size;
      size += value.byteLength;
      if (size > most) {
        await reader.cancel();
        return 'more';
      }
    }
  } catch {
    return 'damaged';
  }
};
