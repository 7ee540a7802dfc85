import type { BrowserContext, Page, Route } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest';

import { serveWorkbench, type Workbenches } from './openPage';

/* Files are read beside the page: how far it is, the stop, and a reader that breaks off. */

const READER = '**/read-file.js';
const LIST = ['Bed,Rose,Size', ...Array.from({ length: 20_000 }, (_, row) => `East,Rose ${row},large`)].join(
  '\n',
);

let benches: Workbenches;
let context: BrowserContext;
let page: Page;
let troubles: readonly string[];
beforeAll(async () => {
  benches = await serveWorkbench();
});
afterAll(() => benches?.close());
beforeEach(async () => {
  context = await benches.browser.newContext({ locale: 'en-US' });
  ({ page, troubles } = await benches.open(context));
});
afterEach(() => context.close());

const choose = (name: string, content: string | Buffer): Promise<void> =>
  page.setInputFiles('#file', { name, mimeType: 'text/csv', buffer: Buffer.from(content) });
const notice = (words: string) => page.locator('#notices .notice', { hasText: words });
const fileName = () => page.locator('#file-name').innerText();

/** Keeps readers from starting; answers with the requests for them. */
const holdReaders = async (): Promise<Route[]> => {
  const held: Route[] = [];
  await context.route(READER, (route) => void held.push(route));
  return held;
};
const staysAsItWas = async (): Promise<void> => {
  expect(await fileName()).toBe('untidy-list.xlsx');
  expect(await page.locator('#pane .answer').innerText()).toContain('10 roses in 2 beds');
};

test('how far a long file is stands in the notice, row by row', async () => {
  await page.evaluate(() => {
    const told: string[] = [];
    Object.assign(window, { told });
    new MutationObserver(() => {
      const bar = document.querySelector<HTMLProgressElement>('#notices progress');
      const count = bar?.nextElementSibling?.textContent;
      if (bar && count && told.at(-1) !== count) told.push(count, String(bar.value / bar.max));
    }).observe(document.querySelector('#notices')!, { subtree: true, childList: true, characterData: true });
  });
  await choose('long.csv', LIST);
  await page.locator('#pane .answer', { hasText: '20,000 roses' }).waitFor();
  const told = await page.evaluate(() => (window as unknown as { told: string[] }).told);
  expect(told.length).toBeGreaterThan(4);
  expect(told.slice(-2)).toEqual(['20,001 of 20,001 rows', '1']);
  expect(told[0]).toMatch(/^\d?,?\d{3} of 20,001 rows$/);
  expect(await page.locator('#notices').innerText()).toBe('');
  expect(troubles).toEqual([]);
});

test('reading is stopped by its button, and the workbook stays as it was', async () => {
  const held = await holdReaders();
  await choose('long.csv', LIST);
  const opening = notice('Opening “long.csv”');
  await expect.poll(() => held.length).toBe(1);
  await opening.getByRole('button', { name: 'Stop' }).click();
  await notice('“long.csv” was not opened, as you stopped it.').waitFor();
  expect(await opening.count()).toBe(0);
  await staysAsItWas();
  expect(troubles).toEqual([]);
});

test('of two files that are opened in haste the later one wins', async () => {
  const held = await holdReaders();
  await choose('first.csv', LIST);
  await expect.poll(() => held.length).toBe(1);
  await context.unroute(READER);
  await choose('second.csv', 'Bed,Rose,Size\nNorth,Copper Gate,large\n');
  await page.locator('#file-name', { hasText: 'second.csv' }).waitFor();
  await held[0]!.continue().catch(() => undefined);
  await page.locator('#pane .answer', { hasText: '1 rose' }).waitFor();
  expect(await fileName()).toBe('second.csv');
  expect(await notice('first.csv').count()).toBe(0);
  expect(troubles).toEqual([]);
});

test.each([
  ['that breaks off', (route: Route) => route.fulfill({ contentType: 'text/javascript', body: 'throw 1;' })],
  ['that is not there', (route: Route) => route.fulfill({ status: 404, body: '' })],
])('a reader %s is said, the page goes on, and the next file opens', async (_what, answer) => {
  await context.route(READER, answer);
  await choose('long.csv', LIST);
  await notice('“long.csv” was not opened: the part of the page that reads files broke off.').waitFor();
  expect(await notice('Opening').count()).toBe(0);
  await staysAsItWas();
  await context.unroute(READER);
  await choose('small.csv', 'Bed,Rose,Size\nNorth,Copper Gate,large\n');
  await page.locator('#file-name', { hasText: 'small.csv' }).waitFor();
  expect(await page.locator('#notices').innerText()).toBe('');
});

test('a list that was saved as Unicode text is opened', async () => {
  await choose('list.txt', Buffer.from('\ufeffBed\tRose\tSize\r\nNord\tAbendglühen\tlarge\r\n', 'utf16le'));
  await page.locator('#file-name', { hasText: 'list.txt' }).waitFor();
  await page.locator('#pane .answer', { hasText: '1 rose' }).waitFor();
  expect(troubles).toEqual([]);
});
