import { strToU8, zlibSync } from 'fflate';

/** The mark of the program, a barrel with a drop on it, in a square of one by one. */

type Point = readonly [x: number, y: number];

/** Half the barrel's width at a height: staves bulge towards the middle. */
const halfWidth = (y: number): number => 0.28 + 0.12 * Math.sin(Math.PI * ((y - 0.06) / 0.88));

const inBarrel = ([x, y]: Point): boolean => y >= 0.06 && y <= 0.94 && Math.abs(x - 0.5) <= halfWidth(y);

/** The two hoops are gaps between the staves. */
const inHoop = ([, y]: Point): boolean => Math.abs(y - 0.2) < 0.028 || Math.abs(y - 0.8) < 0.028;

const DROP = { x: 0.5, y: 0.56, radius: 0.135, tip: 0.29 };

const inDrop = ([x, y]: Point): boolean => {
  const { radius, tip } = DROP;
  if (Math.hypot(x - DROP.x, y - DROP.y) <= radius) return true;
  // The tip is the triangle that touches the circle from above.
  const rise = DROP.y - tip;
  const touch = DROP.y - (radius * radius) / rise;
  const width = (radius * Math.sqrt(rise * rise - radius * radius)) / rise;
  return y >= tip && y <= touch && Math.abs(x - DROP.x) <= (width * (y - tip)) / (touch - tip);
};

const inked = (point: Point): boolean => inBarrel(point) && !inHoop(point) && !inDrop(point);

/** Samples along each side of a pixel. */
const SAMPLES = 8;

/** Share of a pixel that is inked, 0 to 255. */
const coverage = (column: number, row: number, size: number): number => {
  let hits = 0;
  for (let i = 0; i < SAMPLES; i += 1)
    for (let j = 0; j < SAMPLES; j += 1)
      if (inked([(column + (i + 0.5) / SAMPLES) / size, (row + (j + 0.5) / SAMPLES) / size])) hits += 1;
  return Math.round((255 * hits) / (SAMPLES * SAMPLES));
};

const crcOf = (bytes: Uint8Array): number => {
  let crc = 0xffffffff;
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit += 1) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1;
  }
  return (crc ^ 0xffffffff) >>> 0;
};

const chunk = (kind: string, data: Uint8Array): Uint8Array => {
  const bytes = new Uint8Array(12 + data.length);
  const view = new DataView(bytes.buffer);
  view.setUint32(0, data.length);
  bytes.set(strToU8(kind), 4);
  bytes.set(data, 8);
  view.setUint32(8 + data.length, crcOf(bytes.subarray(4, 8 + data.length)));
  return bytes;
};

const SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];

/**
 * The mark as a PNG (ISO/IEC 15948) with a clear ground.
 *
 * @param size  width and height, pixels
 * @param colour '#rrggbb'
 */
export const markImage = (size: number, colour: string): Uint8Array => {
  const ink = [1, 3, 5].map((at) => Number.parseInt(colour.slice(at, at + 2), 16));
  const lines = new Uint8Array(size * (1 + 4 * size));
  for (let row = 0; row < size; row += 1)
    for (let column = 0; column < size; column += 1)
      lines.set([...ink, coverage(column, row, size)], row * (1 + 4 * size) + 1 + 4 * column);
  const header = new Uint8Array(13);
  const view = new DataView(header.buffer);
  view.setUint32(0, size);
  view.setUint32(4, size);
  // Eight bits a channel, red, green, blue and cover.
  header.set([8, 6, 0, 0, 0], 8);
  const parts = [
    Uint8Array.from(SIGNATURE),
    chunk('IHDR', header),
    chunk('IDAT', zlibSync(lines, { level: 9 })),
    chunk('IEND', new Uint8Array()),
  ];
  const image = new Uint8Array(parts.reduce((length, part) => length + part.length, 0));
  parts.reduce((at, part) => (image.set(part, at), at + part.length), 0);
  return image;
};
