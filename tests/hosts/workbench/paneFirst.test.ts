import { readFileSync } from 'node:fs';
import { join } from 'node:path';

import type { BrowserContext, Page, Route } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest';

import { root } from '../../../addin/build/paths.mjs';
import { serveWorkbench, smallList, started, type Workbenches } from './openPage';
import { openOnPage } from './pageGrower';

let benches: Workbenches;
let context: BrowserContext;
let page: Page;
let troubles: readonly string[];
let bring: () => Promise<void>;

beforeAll(async () => {
  benches = await serveWorkbench();
});
afterAll(() => benches?.close());
beforeEach(async () => {
  context = await benches.browser.newContext({ viewport: { width: 1280, height: 800 }, locale: 'en-US' });
});
afterEach(() => context.close());

/** The page with its sheets held back until they are brought. */
const openWithheld = async (): Promise<void> => {
  const held: Route[] = [];
  let brought = false;
  bring = async () => {
    brought = true;
    await Promise.all(held.map((route) => route.continue()));
    await started(page);
  };
  const hold = (route: Route): void => void (brought ? route.continue() : held.push(route));
  ({ page, troubles } = await benches.openWithout(context, hold));
  await page.locator('#pane .answer', { hasText: '10 roses in 2 beds' }).waitFor();
};
const inGrid = (): Promise<string[]> => page.locator('[data-u-comp="slide-tab-item"]').allInnerTexts();

test('the steps answer before the sheets are there, and what stands in their place says so', async () => {
  await openWithheld();
  expect(await page.locator('#grid').innerText()).toContain('The sheets are coming.');
  expect(await page.locator('#grid progress').isVisible()).toBe(true);
  expect(await page.locator('#grid canvas').count()).toBe(0);
  await bring();
  expect(await page.locator('#grid').innerText()).not.toContain('coming');
  expect(await inGrid()).toEqual(['My roses']);
  expect(await page.locator('#file-state').isVisible()).toBe(false);
  expect(troubles).toEqual([]);
});

test('what is typed meanwhile stays, with the keys where they were', async () => {
  await openWithheld();
  const garden = readFileSync(join(root, 'sample-workbooks', 'garden.xlsx'));
  await openOnPage(page, 'garden.xlsx', garden);
  await page.locator('#pane .step', { hasText: 'Rig' }).click();
  const field = page.locator('#pane .entry input').first();
  await field.fill('57');
  await bring();
  expect(await field.inputValue()).toBe('57');
  await page.keyboard.type('5');
  expect(await field.inputValue()).toBe('575');
  // The grid is asked for the keys by the user alone, from the first time on.
  await page.keyboard.press('F6');
  expect(await page.evaluate(() => document.activeElement?.closest('#grid')?.id)).toBe('grid');
});

test('a press that writes waits for the sheets in sight, and is done once they are there', async () => {
  await openWithheld();
  await page.locator('#pane button', { hasText: 'Make the plant inventory' }).click();
  await page.locator('#pane .busy progress').waitFor();
  expect(await page.locator('#pane .message p').innerText()).toBe('');
  await bring();
  await page.locator('#pane .message', { hasText: 'Made the plant inventory' }).waitFor();
  expect(await inGrid()).toEqual(expect.arrayContaining(['My roses', 'Plants', 'Beds']));
  expect(await page.locator('#file-state').isVisible()).toBe(true);
  expect(troubles).toEqual([]);
});

test('of two files opened before the sheets are there they show the later one', async () => {
  await openWithheld();
  await openOnPage(page, 'first.csv', Buffer.from('Bed,Rose\nEast,Winter Lantern'));
  await openOnPage(page, 'second.xlsx', await smallList());
  await page.locator('#pane .answer', { hasText: '10 roses' }).waitFor();
  await bring();
  expect(await inGrid()).toEqual(['My roses']);
  expect(await page.locator('#file-name').innerText()).toBe('second.xlsx');
  expect(await page.locator('#notices').innerText()).toBe('');
});

test('where the sheets do not come the steps go on, and a press that writes says why it does not', async () => {
  ({ page } = await benches.openWithout(context, (route) => void route.abort()));
  await page.locator('#grid', { hasText: 'The sheets could not be loaded.' }).waitFor();
  await page.locator('#pane .answer', { hasText: '10 roses in 2 beds' }).waitFor();
  await page.locator('#pane button', { hasText: 'Make the plant inventory' }).click();
  await page.locator('#pane .message', { hasText: 'nothing can be written' }).waitFor();
  await page.locator('#save').click();
  await page.locator('#notices', { hasText: 'could not be saved (The sheets could not be loaded' }).waitFor();
});
