import { expect, test } from 'vitest';

import { FileRefused } from '../../addin/files/fileRefused';
import { readAll, valuesOf } from './reading';

const LIST = 'Bed\tRose\tHow many\r\nEast\t"Rosé, ""old"""\t3\r\nWest\tНочь\t007\r\n';
const ROWS = [
  ['Bed', 'Rose', 'How many'],
  ['East', 'Rosé, "old"', 3],
  ['West', 'Ночь', '007'],
];

const littleEnd = (text: string): Uint8Array => new Uint8Array(Buffer.from(text, 'utf16le'));
const bigEnd = (text: string): Uint8Array => new Uint8Array(Buffer.from(text, 'utf16le').swap16());

test.each([
  ['UTF-8', new TextEncoder().encode(LIST)],
  ['UTF-8 with its mark', new TextEncoder().encode(`\ufeff${LIST}`)],
  ['UTF-16, as spreadsheets save "Unicode text"', littleEnd(`\ufeff${LIST}`)],
  ['UTF-16, high bytes first', bigEnd(`\ufeff${LIST}`)],
  ['UTF-16 without a mark', littleEnd(LIST)],
  ['UTF-16 without a mark, high bytes first', bigEnd(LIST)],
])('a list in %s is read', async (_what, bytes) => {
  expect(valuesOf(await readAll('list.txt', bytes))).toEqual(ROWS);
});

test('UTF-16 without a mark is known where few of its letters are Latin', async () => {
  const list = 'Клумба\tРоза\nВосток\tНочь\n';
  for (const bytes of [littleEnd(list), bigEnd(list)])
    expect(valuesOf(await readAll('list.txt', bytes))).toEqual([
      ['Клумба', 'Роза'],
      ['Восток', 'Ночь'],
    ]);
});

test('the mark tells where no byte is zero', async () => {
  expect(valuesOf(await readAll('list.txt', littleEnd('\ufeffРоза')))).toEqual([['Роза']]);
  expect(valuesOf(await readAll('list.txt', bigEnd('\ufeffРоза')))).toEqual([['Роза']]);
});

test('a list in the older Western way is read', async () => {
  const bytes = new Uint8Array(Buffer.from('Bed;Rose\nEast;Rosé\n', 'latin1'));
  expect(valuesOf(await readAll('list.csv', bytes))).toEqual([
    ['Bed', 'Rose'],
    ['East', 'Rosé'],
  ]);
});

test.each([
  ['zero bytes in both places', [0x42, 0, 0, 0x65]],
  ['half a letter at its end', [...littleEnd('Bed;Rose'), 0x41]],
  ['half a pair of letters', [...littleEnd('Bed;'), 0x00, 0xd8, 0x41, 0x00]],
  ['a zero letter', [...littleEnd('\ufeffBed;'), 0, 0]],
  ['the beginning of a picture', [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13]],
])('what has %s is no list of values', async (_what, bytes) => {
  const reading = readAll('list.csv', Uint8Array.from(bytes));
  await expect(reading).rejects.toThrow('“list.csv” is not a list of values, whatever its name says.');
  await expect(reading).rejects.toBeInstanceOf(FileRefused);
});

test('a long list comes in pages, with how far it is', async () => {
  const rows = Array.from({ length: 25_000 }, (_, row) => `East,Rose ${row}`);
  const read = await readAll('long.csv', new TextEncoder().encode(rows.join('\n')));
  expect(read.pages.length).toBeGreaterThan(3);
  expect(read.progress).toHaveLength(read.pages.length);
  expect(
    read.progress.every(([done, of], at) => of === 25_000 && done > (read.progress[at - 1]?.[0] ?? 0)),
  ).toBe(true);
  expect(read.progress.at(-1)).toEqual([25_000, 25_000]);
  expect(valuesOf(read)).toEqual(rows.map((row) => row.split(',')));
});
