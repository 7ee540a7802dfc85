import { deflateRawSync } from 'node:zlib';

import { Workbook as FileBook } from '@cj-tech-master/excelts';
import { strToU8, unzipSync, zipSync } from 'fflate';
import { afterAll, beforeAll, expect, test } from 'vitest';

import { FileRefused } from '../../../addin/files/fileRefused';
import { guardXlsx } from '../../../addin/files/guardFile';
import { openTestPage, type TestPage } from './openTestPage';

let bench: TestPage;
let good: Uint8Array;
beforeAll(async () => {
  const file = new FileBook();
  file.addWorksheet('List').addRows([
    ['Bed', 'Rose'],
    ['East', 'Winter Lantern'],
  ]);
  good = new Uint8Array(await file.xlsx.writeBuffer());
  bench = await openTestPage();
});
afterAll(() => bench?.close());

const base64 = (bytes: Uint8Array): string => Buffer.from(bytes).toString('base64');
const PARTS = { '[Content_Types].xml': strToU8('<Types/>'), 'xl/workbook.xml': strToU8('<workbook/>') };

/** The good file with one of its parts in other words. */
const withPart = (name: string, text: string): Uint8Array =>
  zipSync({ ...unzipSync(good), [name]: strToU8(text) });

/** A zip whose directory says that its one large part is small. */
const lyingZip = (): Uint8Array => {
  const bytes = zipSync({ ...PARTS, 'xl/worksheets/sheet1.xml': new Uint8Array(3_000_000) }, { level: 9 });
  const view = new DataView(bytes.buffer);
  for (let at = 0; at < bytes.length - 4; at++)
    if (view.getUint32(at, true) === 0x02014b50 && view.getUint32(at + 24, true) === 3_000_000)
      view.setUint32(at + 24, 30_000, true);
  return bytes;
};

/** A zip that says it is protected with a password. */
const lockedZip = (): Uint8Array => {
  const bytes = zipSync(PARTS);
  const view = new DataView(bytes.buffer);
  for (let at = 0; at < bytes.length - 4; at++)
    if (view.getUint32(at, true) === 0x02014b50)
      view.setUint16(at + 8, view.getUint16(at + 8, true) | 1, true);
  return bytes;
};

const BAD: Readonly<Record<string, readonly [name: string, bytes: () => Uint8Array, says: RegExp]>> = {
  'an empty file': [
    'list.xlsx',
    () => new Uint8Array(),
    /^“list.xlsx” is empty; there is nothing in it to open\.$/,
  ],
  'a file cut off': [
    'list.xlsx',
    () => good.slice(0, Math.floor(good.length * 0.7)),
    /is cut off or damaged/,
  ],
  'a file with a hole in it': [
    'list.xlsx',
    () => good.map((byte, at) => (at > 200 && at < 600 ? 0 : byte)),
    /is cut off or damaged/,
  ],
  'a password, in the old manner': [
    'list.xlsx',
    () => Uint8Array.of(0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1, ...Array<number>(600).fill(0)),
    /is protected with a password, or is a spreadsheet of the old \.xls kind/,
  ],
  'a password, in the zip': ['list.xlsx', lockedZip, /is protected with a password\. Save it without one/],
  'a picture under another name': [
    'list.xlsx',
    () => Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13),
    /is not an \.xlsx spreadsheet, whatever its name says/,
  ],
  'a text under another name': [
    'list.xlsx',
    () => strToU8('Bed;Rose\nEast;Winter Lantern\n'),
    /is not an \.xlsx spreadsheet, whatever its name says/,
  ],
  'another packed file': [
    'list.xlsx',
    () => zipSync({ 'readme.txt': strToU8('hello') }),
    /is a packed file, and not an \.xlsx spreadsheet/,
  ],
  'an OpenDocument sheet': [
    'list.xlsx',
    () =>
      zipSync({
        mimetype: strToU8('application/vnd.oasis.opendocument.spreadsheet'),
        'content.xml': strToU8('<x/>'),
      }),
    /is an OpenDocument spreadsheet\. Save it as \.xlsx/,
  ],
  'a file made to burst': [
    'list.xlsx',
    () => zipSync({ ...PARTS, 'xl/worksheets/sheet1.xml': new Uint8Array(30_000_000) }, { level: 9 }),
    /would unpack to 29 MB in 3 parts\. That is no ordinary spreadsheet/,
  ],
  'a file made to burst that says it is small': ['list.xlsx', lyingZip, /unpacks to more than it says/],
  'sheets that are not written as they should be': [
    'list.xlsx',
    () => withPart('xl/worksheets/sheet1.xml', '<worksheet><sheetData><row r="1"><c r="A1"><v>1</v'),
    /could not be read: it is damaged/,
  ],
  'a list of values that is none': [
    'list.csv',
    () => Uint8Array.of(0x42, 0, 0, 0x65),
    /is not a list of values/,
  ],
  'an empty list of values': ['list.csv', () => new Uint8Array(), /^“list.csv” is empty/],
};

test.each(Object.entries(BAD))(
  '%s is refused in a sentence, and the workbook stays',
  async (_what, [name, bytes, says]) => {
    await bench.call('open');
    await bench.call('apply', {
      title: 'Mark',
      edits: [{ kind: 'write', sheet: 'Sheet1', row: 0, column: 0, cells: [['kept']] }],
    });
    const refused = bench.call('openFile', name, base64(bytes()));
    await expect(refused).rejects.toThrow(says);
    const { sheets } = (await bench.call('outline')) as { sheets: unknown };
    expect(sheets).toEqual([{ name: 'Sheet1', rows: 1, columns: 1, merges: [] }]);
  },
);

test('the good file of which the bad ones are made opens', async () => {
  expect(await bench.call('openFile', 'list.xlsx', base64(good))).toEqual([]);
  const { sheets } = (await bench.call('outline')) as { sheets: unknown };
  expect(sheets).toMatchObject([{ name: 'List', rows: 2, columns: 2 }]);
});

test('a file of a gigabyte of nothing is refused before it is unpacked', async () => {
  // A gigabyte of zeros packs to a megabyte; its parts are put together by hand, so that the test itself stays small.
  const packed = deflateRawSync(new Uint8Array(1_000_000), { level: 9 });
  const bytes = zipSync({ ...PARTS, 'xl/worksheets/sheet1.xml': [packed, { level: 0 }] });
  const view = new DataView(bytes.buffer);
  for (let at = 0; at < bytes.length - 4; at++)
    if (view.getUint32(at, true) === 0x02014b50 && view.getUint32(at + 24, true) === packed.length)
      view.setUint32(at + 24, 1_000_000_000, true);
  await expect(guardXlsx('list.xlsx', bytes)).rejects.toThrow(/would unpack to 954 MB/);
  await expect(guardXlsx('list.xlsx', bytes)).rejects.toBeInstanceOf(FileRefused);
});

test('a list of values opens as a sheet: numbers as numbers, all else as the text it is', async () => {
  const list = 'Bed;Rose;How many\nEast;"Rosé; ""old""";3\nWest;=1+1;007\n';
  expect(await bench.call('openFile', 'list.csv', base64(Buffer.from(list, 'latin1')))).toEqual([]);
  const area = { sheet: 'List', row: 1, column: 0, rows: 2, columns: 3 };
  const { blocks } = (await bench.call('read', [area])) as { blocks: { cells: { value: unknown }[][] }[] };
  expect(blocks[0]!.cells.map((row) => row.map(({ value }) => value))).toEqual([
    ['East', 'Rosé; "old"', 3],
    ['West', '=1+1', '007'],
  ]);
});

test('a list of 100,000 rows opens', async () => {
  const rows = Array.from({ length: 100_000 }, (_, row) => `East,Rose ${row},${row % 4}`).join('\n');
  await bench.call('openFile', 'long.csv', base64(strToU8(`Bed,Rose,How many\n${rows}`)));
  const { sheets } = (await bench.call('outline')) as { sheets: unknown };
  expect(sheets).toMatchObject([{ name: 'List', rows: 100_001, columns: 3 }]);
});
