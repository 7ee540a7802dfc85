import { afterAll, beforeAll, expect, test } from 'vitest';

import type { Edit } from '../../../addin/workbook/change';
import { workbookOf } from './books';
import { DRESSED, dressInCalc, type Dress } from './dress';
import { sharedOffice, type Office } from './office';

/* What a step back takes back, and what LibreOffice keeps out of its undo. */

let office: Office;
beforeAll(async () => {
  office = await sharedOffice();
});
afterAll(async () => office.end());

const isSheet = ({ kind }: Edit): boolean => kind === 'addSheet';

const withSheets = async () => {
  const doc = await office.ask<string>({ do: 'open_document' });
  const workbook = workbookOf(office, doc);
  await workbook.apply({ title: 'Sheets', edits: DRESSED.filter(isSheet) });
  return { doc, workbook };
};

test('every kind of edit is taken back with its step, but for freezes and the page style', async () => {
  const { doc, workbook } = await withSheets();
  const bare = await dressInCalc(office, doc);
  await workbook.apply({ title: 'Dress', edits: DRESSED.filter((edit) => !isSheet(edit)) });
  const dressed = await dressInCalc(office, doc);
  for (const part of Object.keys(bare) as (keyof Dress)[])
    expect(dressed[part], part).not.toEqual(bare[part]);
  await office.ask({ do: 'undo', doc });
  expect(await dressInCalc(office, doc)).toEqual({
    ...bare,
    frozen: dressed.frozen,
    page: { ...bare.page, landscape: dressed.page.landscape },
  });
});

test('the sheet that a step went to stays in front when the step is taken back', async () => {
  const { doc, workbook } = await withSheets();
  const active = async () => (await workbook.outline()).active;
  const beds = { kind: 'activate', sheet: 'Beds', row: 0, column: 0 } as const;
  await workbook.apply({ title: 'Go', edits: [beds] });
  expect(await active()).toBe('Beds');
  const write = { kind: 'write', sheet: 'Card', row: 0, column: 0, cells: [['East']] } as const;
  await workbook.apply({ title: 'Write', edits: [write, { ...beds, sheet: 'Card' }] });
  await office.ask({ do: 'undo', doc });
  expect((await workbook.outline()).sheets.at(-1)).toMatchObject({ name: 'Card', rows: 0 });
  expect(await active()).toBe('Card');
});

test('styles and number formats that a step brought stay in their lists, and rows are as high as before', async () => {
  const { doc, workbook } = await withSheets();
  const lists = () => office.ask<object>({ do: 'lists', doc });
  const heights = () => office.ask<number[]>({ do: 'heights', doc, sheet: 'Beds', rows: 12 });
  const before = await heights();
  expect(await lists()).toEqual({ cells: [], pages: [], formats: [] });
  await workbook.apply({ title: 'Dress', edits: DRESSED.filter((edit) => !isSheet(edit)) });
  expect(await heights()).not.toEqual(before);
  await office.ask({ do: 'undo', doc });
  expect(await heights()).toEqual(before);
  expect(await lists()).toEqual({
    cells: ['Wandcount header', 'Wandcount input', 'Wandcount title'],
    pages: ['Wandcount Card'],
    formats: ['0.00" L"'],
  });
});
