import { afterEach, beforeEach, expect, test, vi } from 'vitest';

import { plainSheet, type FileBook, type FileRows } from '../../addin/files/fileBook';
import { FileRefused } from '../../addin/files/fileRefused';
import { readBeside, readyReader, type Reader } from '../../addin/files/readBeside';
import type { ReadTold } from '../../addin/files/readWorker';

/* What a page does with its worker, with a worker that says what a test lets it say. */

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

const BOOK: FileBook = { sheets: [plainSheet('List')], names: [], active: 'List', left: [] };
const PAGE: FileRows = { sheet: 0, row: 0, values: [['East']], formulas: [], looks: [[]], newLooks: [] };

const fakeReader = () => {
  const asked: unknown[] = [];
  let ended = 0;
  const reader: Reader = {
    postMessage: (...given: unknown[]) => void asked.push(...given),
    terminate: () => void (ended += 1),
    onmessage: null,
    onmessageerror: null,
    onerror: null,
  };
  const says = (told: ReadTold): void =>
    reader.onmessage?.call(reader as Worker, { data: told } as MessageEvent<ReadTold>);
  return { reader, asked, says, ended: () => ended };
};

const begin = (signal?: AbortSignal) => {
  const fake = fakeReader();
  const heard: unknown[] = [];
  const bytes = Uint8Array.of(1, 2, 3);
  const reading = readBeside(
    'list.xlsx',
    bytes,
    { rows: (page) => void heard.push(page), progress: (...far) => void heard.push(far) },
    { start: () => fake.reader, patience: 5_000, ...(signal ? { signal } : {}) },
  );
  // A refusal that comes before a test looks for it is none that nobody met.
  reading.catch(() => undefined);
  return { ...fake, heard, bytes, reading };
};

test('the bytes go over to the worker; pages and progress are heard until the book ends it', async () => {
  const { reading, asked, bytes, says, heard, ended } = begin();
  expect(asked).toEqual([{ name: 'list.xlsx', bytes }, [bytes.buffer]]);
  says({ kind: 'progress', done: 1, of: 2 });
  says({ kind: 'rows', rows: PAGE });
  expect(ended()).toBe(0);
  says({ kind: 'book', book: BOOK });
  expect(await reading).toBe(BOOK);
  expect(heard).toEqual([[1, 2], PAGE]);
  expect(ended()).toBe(1);
  expect(vi.getTimerCount()).toBe(0);
});

test('a refusal keeps its sentence', async () => {
  const { reading, says, ended } = begin();
  says({ kind: 'refused', sentence: '“list.xlsx” is empty; there is nothing in it to open.' });
  await expect(reading).rejects.toThrow('“list.xlsx” is empty; there is nothing in it to open.');
  await expect(reading).rejects.toBeInstanceOf(FileRefused);
  expect(ended()).toBe(1);
});

test('what fails in another way is told as it is', async () => {
  const { reading, says } = begin();
  says({ kind: 'failed', message: 'no room' });
  await expect(reading).rejects.toThrow(/^no room$/);
  await expect(reading).rejects.not.toBeInstanceOf(FileRefused);
});

test.each(['onerror', 'onmessageerror'] as const)(
  'a worker that dies (%s) ends in a sentence',
  async (how) => {
    const { reading, reader, ended } = begin();
    (reader[how] as (event: unknown) => void)({});
    await expect(reading).rejects.toThrow(
      /^“list.xlsx” was not opened: the part of the page that reads files broke off/,
    );
    await expect(reading).rejects.toBeInstanceOf(FileRefused);
    expect(ended()).toBe(1);
  },
);

test('a worker that falls silent is given up; one that goes on telling is not', async () => {
  const { reading, says, ended } = begin();
  for (let done = 0; done < 10; done++) {
    vi.advanceTimersByTime(4_999);
    says({ kind: 'progress', done, of: 10 });
  }
  expect(ended()).toBe(0);
  vi.advanceTimersByTime(5_000);
  await expect(reading).rejects.toThrow(/^“list.xlsx” was not opened: reading it stopped halfway/);
  expect(ended()).toBe(1);
});

test('a stop ends the worker, and what it had sent already is not heard', async () => {
  const stopping = new AbortController();
  const { reading, says, heard, ended } = begin(stopping.signal);
  says({ kind: 'progress', done: 1, of: 2 });
  stopping.abort();
  says({ kind: 'rows', rows: PAGE });
  says({ kind: 'book', book: BOOK });
  await expect(reading).rejects.toBe(stopping.signal.reason);
  expect(heard).toEqual([[1, 2]]);
  expect(ended()).toBe(1);
  expect(vi.getTimerCount()).toBe(0);
});

test('what was stopped before it began starts no worker', async () => {
  const { reading, asked } = begin(AbortSignal.abort());
  await expect(reading).rejects.toBeDefined();
  expect(asked).toEqual([]);
});

test('a page that cannot take what is told gives up the reading', async () => {
  const fake = fakeReader();
  const reading = readBeside(
    'list.xlsx',
    new Uint8Array(3),
    {
      rows: () => {
        throw new Error('no such look');
      },
      progress: () => undefined,
    },
    { start: () => fake.reader },
  );
  fake.says({ kind: 'rows', rows: PAGE });
  await expect(reading).rejects.toThrow('no such look');
  expect(fake.ended()).toBe(1);
});

const NOTHING = { rows: () => undefined, progress: () => undefined };

test('a worker that was made ready reads the next file, and no other', async () => {
  const [first, second] = [fakeReader(), fakeReader()];
  readyReader(() => first.reader);
  readyReader(() => second.reader);
  const reading = readBeside('list.xlsx', new Uint8Array(3), NOTHING);
  expect(second.asked).toEqual([]);
  first.says({ kind: 'book', book: BOOK });
  expect(await reading).toBe(BOOK);
  readyReader(() => second.reader);
  const next = readBeside('list.xlsx', new Uint8Array(3), NOTHING);
  second.says({ kind: 'book', book: BOOK });
  expect(await next).toBe(BOOK);
});

test('a worker that died before it was needed reads nothing', async () => {
  const [dead, fresh] = [fakeReader(), fakeReader()];
  readyReader(() => dead.reader);
  (dead.reader.onerror as (event: unknown) => void)({});
  readyReader(() => fresh.reader);
  const reading = readBeside('list.xlsx', new Uint8Array(3), NOTHING);
  expect(dead.asked).toEqual([]);
  fresh.says({ kind: 'book', book: BOOK });
  expect(await reading).toBe(BOOK);
});
