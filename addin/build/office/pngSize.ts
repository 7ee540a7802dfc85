const SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
const HEADER_ENDS = 24;

/** Width and height of a PNG in pixels, from its header (ISO/IEC 15948, 11.2.2); undefined for anything else. */
export const pngSize = (bytes: Uint8Array): { width: number; height: number } | undefined => {
  if (bytes.length < HEADER_ENDS || SIGNATURE.some((byte, at) => bytes[at] !== byte)) return undefined;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  return { width: view.getUint32(16), height: view.getUint32(20) };
};
