import { mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import { dist, root } from '../../../addin/build/paths.mjs';
import { serve } from '../../../addin/build/serve.mjs';
import { buildWorkbench } from '../../../addin/build/targets.mjs';
import { sharedChromium, watchTroubles } from './openTestPage';
import { savedFile, type SavedFile } from './savedFile';

const output = join(root, 'tests', 'output', 'workbench');

describe('from the sample list to a card and a log line, by the screen alone', { timeout: 90_000 }, () => {
  let context: BrowserContext;
  let page: Page;
  let server: Awaited<ReturnType<typeof serve>>;
  let troubles: readonly string[];

  const press = (name: string) => page.getByRole('button', { name, exact: true }).first().click();
  const fill = (label: string, text: string) => page.getByLabel(label, { exact: true }).first().fill(text);
  const sees = (text: string | RegExp) => page.getByText(text).first().waitFor();
  let first: SavedFile;
  const save = async (): Promise<SavedFile> => {
    const download = page.waitForEvent('download');
    await press('Save');
    return savedFile(readFileSync(await (await download).path()));
  };
  const picture = (name: string) => page.screenshot({ path: join(output, `${name}.png`) });

  beforeAll(async () => {
    mkdirSync(output, { recursive: true });
    await buildWorkbench();
    server = await serve(join(dist, 'workbench'), 0);
    const browser = await sharedChromium();
    context = await browser.newContext({ viewport: { width: 1360, height: 850 }, acceptDownloads: true });
    page = await context.newPage();
    page.setDefaultTimeout(12_000);
    // A headless browser shows no system dialog for files: the page then hands the file over as a download.
    await page.addInitScript(() => {
      Object.assign(window, { showSaveFilePicker: undefined, showOpenFilePicker: undefined });
    });
    troubles = watchTroubles(page, server.address);
    await page.goto(server.address);
  });
  afterAll(async () => {
    await context?.close();
    server?.close();
  });

  test('the sample list is open and its inventory is the one thing to do', async () => {
    await sees('Make the plant inventory');
    await sees(/350 roses in 14 beds/);
    await picture('list');
    await press('Make the plant inventory');
    await sees(/Made the plant inventory/);
    await picture('garden');
  });

  test('the rig is kept with the flow of the timed buckets', async () => {
    await press('Go on to Rig');
    await fill('The barrel holds', '60');
    for (const [at, seconds] of ['46.1', '45.8', '46.6'].entries()) await fill(`Time ${at + 1}`, seconds);
    await press('Keep this rig');
    await sees(/Kept the rig: 2\.6 gal\/min/);
    await picture('rig');
  });

  test('a product goes into the mix', async () => {
    await press('Go on to Mix');
    await fill('Name', 'Soluble powder 20-20-20');
    await fill("Label's greatest rate", '1');
    await fill('Nitrogen, N', '20');
    await press('Keep this product');
    await sees('Added Soluble powder 20-20-20 to the products.');
    await fill('Rate of product 1', '1');
    await press('Keep this mix');
    await sees(/60 gal takes 3 3\/4 cups/);
    await picture('mix');
  });

  test('the round becomes a card', async () => {
    await press('Go on to Round');
    await sees(/fills to 60 gal/);
    await press('Make the card');
    await sees(/Made the card/);
    await picture('round');
  });

  test('the round is logged', async () => {
    await page.getByRole('button', { name: /^Log/ }).first().click();
    await fill('Left over', '2');
    await press('Write the log line');
    await sees(/Wrote the round of/);
    await picture('log');
  });

  test('saved to a file and opened again, every cell of every sheet is the same', async () => {
    first = await save();
    const chooser = page.waitForEvent('filechooser');
    await press('Open');
    await (
      await chooser
    ).setFiles({
      name: 'again.xlsx',
      mimeType: 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
      buffer: first.bytes,
    });
    await page.locator('#file-name', { hasText: 'again.xlsx' }).waitFor();
    await sees(/fills to 60 gal/);
    await page.getByRole('button', { name: /^Log/ }).first().click();
    await sees(/gal, \d+ % of the plan/);
    await picture('opened-again');
    const again = await save();
    expect(again.sheets).toEqual(first.sheets);
    expect(Object.keys(first.cells).length).toBeGreaterThan(3_000);
    expect(again.cells).toEqual(first.cells);
  });

  test('a dose typed into its cell changes the counts and totals of the card', async () => {
    const { row } = first.find('Doses', 'Large bush');
    const cell = `B${row}`;
    await page.getByRole('tab', { name: 'Doses', exact: true }).click();
    const nameBox = page.locator('[data-u-comp=defined-name] input');
    await nameBox.fill(cell);
    await nameBox.press('Enter');
    await page.keyboard.type('0.5');
    await picture('dose-typed');
    await page.keyboard.press('Enter');
    await page
      .getByRole('button', { name: /^Round/ })
      .first()
      .click();
    await sees('12 s');
    await page.getByRole('tab', { name: 'Round card', exact: true }).click();
    await picture('card-follows');
    const after = await save();

    const before = first.number(`Doses!${cell}`);
    expect(before).toBeGreaterThan(0.5);
    expect(after.number(`Doses!${cell}`)).toBe(0.5);
    const { row: plantsRow, column } = first.find('Round card', 'Large bush');
    const plants = first.number(`Round card!${column}${plantsRow + 3}`);
    expect(plants).toBeGreaterThan(200);
    expect(after.number(`Round card!${column}${plantsRow + 1}`)).toBe(12);
    const less = (name: string) => first.named(name) - after.named(name);
    expect(less('Card_need')).toBeCloseTo(plants * (before - 0.5), 6);
    expect(less('Card_made_up')).toBeCloseTo(plants * (before - 0.5), 6);
    expect(less('Card_finish')).toBeGreaterThan(0);
    expect(less('Card_plants')).toBe(0);
    const made = Math.round(after.named('Card_made_up') * 10) / 10;
    expect(after.cells['Round card!A2']).toContain(`${made} gal made up`);
  });

  test('nothing went wrong on the way, and nothing was asked of elsewhere', () => {
    expect(troubles).toEqual([]);
  });
});
