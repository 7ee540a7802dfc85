import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';

import { root } from '../../../addin/build/paths.mjs';
import { cardAreas } from '../../../addin/workbook/card/cardNames';
import { readCard } from '../../../addin/workbook/card/readCard';
import type { Outline, Snapshot } from '../../../addin/workbook/port';
import { gardenAreas, readGarden } from '../../../addin/workbook/readGarden';
import { usedArea } from '../../../addin/workbook/snapshot';
import { openTestPage, type TestPage } from './openTestPage';

const sample = readFileSync(join(root, 'sample-workbooks', 'garden.xlsx')).toString('base64');
let page: TestPage;

const outline = (): Promise<Outline> => page.call('outline');
const garden = async (): Promise<Snapshot> => {
  const now = await outline();
  return page.call('read', [...gardenAreas(now), ...cardAreas(now)]);
};
/** Every cell of every sheet. */
const everything = async () => {
  const now = await outline();
  const areas = now.sheets.flatMap(({ name }) => usedArea(now, name) ?? []);
  const { blocks }: Snapshot = await page.call('read', areas);
  return blocks;
};

beforeAll(async () => {
  page = await openTestPage();
  await page.call('openFile', 'garden.xlsx', sample);
});
afterAll(() => page?.close());

test('a dose changed in its cell of the grid changes the card’s count, need and made-up volume', async () => {
  const before = await garden();
  const doses = readGarden(before).doses;
  const row = doses.find(({ sizeClass }) => sizeClass === 'Large bush')!.row;
  const plants = readGarden(before)
    .plants.filter(({ sizeClass }) => sizeClass === 'Large bush')
    .reduce((sum, { howMany }) => sum + howMany, 0);
  const dose = (value: number) =>
    page.call('apply', {
      title: 'Dose',
      edits: [{ kind: 'write', sheet: 'Doses', row, column: 1, cells: [[value]] }],
    });
  await dose(0.7);
  const after = readCard(await garden())!;
  const earlier = readCard(before)!;
  expect(earlier.need - after.need).toBeCloseTo(plants * 0.05, 6);
  expect(earlier.madeUp - after.madeUp).toBeCloseTo(plants * 0.05, 6);
  await dose(0.75);
  expect(readCard(await garden())).toEqual(earlier);
});

test('saved and opened again, every cell has the same value and formula', async () => {
  const before = await everything();
  expect(before.flatMap(({ cells }) => cells.flat()).filter(({ formula }) => formula).length).toBeGreaterThan(
    500,
  );
  const saved: string = await page.call('saveFile');
  await page.call('openFile', 'again.xlsx', saved);
  const after = await everything();
  expect(after.map(({ area }) => area)).toEqual(before.map(({ area }) => area));
  before.forEach(({ area, cells }, index) => expect(after[index]!.cells, area.sheet).toEqual(cells));
});

test('rows taken out of the card are followed at once: nothing changes when the file is opened again', async () => {
  for (const row of [18, 9]) await page.call('deleteRows', 'Round card', row, 1);
  const before = await everything();
  const card = before.find(({ area }) => area.sheet === 'Round card')!.cells;
  expect(card[0]![0]!.value).toBe('Round card: make it again');
  expect(card[1]![0]!.value).toBe('This card is out of date');
  const saved: string = await page.call('saveFile');
  await page.call('openFile', 'again.xlsx', saved);
  const after = await everything();
  before.forEach(({ area, cells }, index) => expect(after[index]!.cells, area.sheet).toEqual(cells));
});
