import { copyFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';

import { cellAddress } from '../../../addin/workbook/address';
import { CARD } from '../../../addin/workbook/card/cardNames';
import { usedArea } from '../../../addin/workbook/snapshot';
import { workbookOf } from './books';
import { MAIN_JOB, openList, sample } from './mainJob';
import { sharedOffice, type Office } from './office';

/* The card's sheet copied into another document, where the office makes links to the garden's file of its formulas. */

const SHEET = 'Round card';
const RATE = 'B6';
const AMOUNT = /\d (?:cups?|tbsp|tsp|qt)\b(?!\/)/;

let office: Office;
let garden: string;
let path: string;
beforeAll(async () => {
  office = await sharedOffice();
  path = join(office.folder, 'garden.xlsx');
  copyFileSync(sample('garden.xlsx'), path);
  garden = await office.ask<string>({ do: 'open_document', path });
});
afterAll(() => office?.end());

/** Every cell of the sheet, as it shows and as it is. */
const cellsOf = async (doc: string) => {
  const workbook = workbookOf(office, doc);
  const { blocks } = await workbook.read([usedArea(await workbook.outline(), SHEET)!]);
  return blocks[0]!.cells;
};
const amountsOn = async (doc: string): Promise<string[]> =>
  (await cellsOf(doc)).flatMap((row) =>
    row.flatMap(({ value }) => (AMOUNT.test(String(value)) ? [String(value)] : [])),
  );
const copyInto = (to: string) => office.ask({ do: 'copy_sheet', doc: garden, sheet: SHEET, to });
const type = (rate: number) =>
  office.ask({ do: 'put_values', doc: garden, sheet: 'Mix', cells: RATE, values: [[rate]] });

test('what it shows there is what the garden says, and no measure above a label', async () => {
  const within = await amountsOn(garden);
  expect(within.length).toBeGreaterThan(4);
  const copy = await office.ask<string>({ do: 'open_document' });
  await copyInto(copy);
  const copied = await amountsOn(copy);
  expect(within).toEqual(expect.arrayContaining(copied));

  await type(2);
  await office.ask({ do: 'calculate', doc: copy });
  expect(await amountsOn(garden)).toEqual([]);
  expect(within).toEqual(expect.arrayContaining(await amountsOn(copy)));

  const later = await office.ask<string>({ do: 'open_document' });
  await copyInto(later);
  expect(within).toEqual(expect.arrayContaining(await amountsOn(later)));
  await type(1);
  expect(await amountsOn(garden)).toEqual(within);
});

test('pasted as values it is the user’s own: the pane makes a card beside it and writes nothing over it', async () => {
  const doc = await openList(office);
  await copyInto(doc);
  const shown = (await cellsOf(garden)).map((row) => row.map(({ value }) => value ?? ''));
  const cells = `A1:${cellAddress(shown.length - 1, shown[0]!.length - 1)}`;
  await office.ask({ do: 'put_values', doc, sheet: SHEET, cells, values: shown });
  const before = await cellsOf(doc);
  expect(await amountsOn(doc)).toEqual(await amountsOn(garden));
  for (const event of MAIN_JOB) await office.ask({ do: 'job', doc, request: { event } });
  const { names } = await workbookOf(office, doc).outline();
  expect(names[CARD]).toMatchObject({ sheet: `${SHEET} 2` });
  expect(await cellsOf(doc)).toEqual(before);
});

test('kept in a file, and opened where the garden is gone, it shows no other measure', async () => {
  const within = await amountsOn(garden);
  const copy = await office.ask<string>({ do: 'open_document' });
  await copyInto(copy);
  const kept = join(office.folder, 'copy.ods');
  await office.ask({ do: 'store', doc: copy, path: kept, filter: 'calc8' });
  await office.ask({ do: 'close', doc: copy });
  await office.ask({ do: 'close', doc: garden });
  rmSync(path);
  const again = await office.ask<string>({ do: 'open_document', path: kept });
  await office.ask({ do: 'calculate', doc: again });
  expect(within).toEqual(expect.arrayContaining(await amountsOn(again)));
});
