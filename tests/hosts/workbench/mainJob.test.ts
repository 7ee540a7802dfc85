import { mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import { dist, root } from '../../../addin/build/paths.mjs';
import { serve } from '../../../addin/build/serve.mjs';
import { buildWorkbench } from '../../../addin/build/targets.mjs';
import { launchChromium, watchTroubles } from './openTestPage';

const output = join(root, 'tests', 'output', 'workbench');

describe('from the sample list to a card and a log line, by the screen alone', { timeout: 90_000 }, () => {
  let browser: Browser;
  let page: Page;
  let server: Awaited<ReturnType<typeof serve>>;
  let troubles: readonly string[];

  const press = (name: string) => page.getByRole('button', { name, exact: true }).first().click();
  const fill = (label: string, text: string) => page.getByLabel(label, { exact: true }).first().fill(text);
  const sees = (text: string | RegExp) => page.getByText(text).first().waitFor();
  const picture = (name: string) => page.screenshot({ path: join(output, `${name}.png`) });

  beforeAll(async () => {
    mkdirSync(output, { recursive: true });
    await buildWorkbench();
    server = await serve(join(dist, 'workbench'), 0);
    browser = await launchChromium();
    page = await browser.newPage({ viewport: { width: 1360, height: 850 }, acceptDownloads: true });
    page.setDefaultTimeout(12_000);
    // A headless browser shows no system dialog for files: the page then hands the file over as a download.
    await page.addInitScript(() => {
      Object.assign(window, { showSaveFilePicker: undefined, showOpenFilePicker: undefined });
    });
    troubles = watchTroubles(page, server.address);
    await page.goto(server.address);
  });
  afterAll(async () => {
    await browser?.close();
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
    await page.waitForTimeout(1500);
    await fill('Rate of product 1', '1');
    await press('Keep this mix');
    await sees(/60 gal takes 3 3\/4 cups/);
    await picture('mix');
  });

  test('the round becomes a card', async () => {
    await press('Go on to Round');
    await sees(/fills of 60 gal/);
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

  test('saved to a file and opened again, the log is still there', async () => {
    const download = page.waitForEvent('download');
    await press('Save');
    const path = await (await download).path();
    expect(readFileSync(path).subarray(0, 2).toString()).toBe('PK');
    const chooser = page.waitForEvent('filechooser');
    await press('Open');
    await (
      await chooser
    ).setFiles({
      name: 'again.xlsx',
      mimeType: 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
      buffer: readFileSync(path),
    });
    await sees(/fills of 60 gal/);
    await page.getByRole('button', { name: /^Log/ }).first().click();
    await sees(/gal, \d+ % of the plan/);
    await picture('opened-again');
  });

  test('nothing went wrong on the way, and nothing was asked of elsewhere', () => {
    expect(troubles).toEqual([]);
  });
});
