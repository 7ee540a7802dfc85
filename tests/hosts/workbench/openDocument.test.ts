import { readFileSync } from 'node:fs';
import { join } from 'node:path';

import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest';

import { root } from '../../../addin/build/paths.mjs';
import { serveWorkbench, smallList, type Workbenches } from './openPage';

/* A spreadsheet as LibreOffice Calc saves it by itself, which the workbench does not read. */

const LIST = readFileSync(join(root, 'sample-workbooks', 'untidy-list.ods'));
const SAYS =
  '“untidy-list.ods” is an OpenDocument spreadsheet. Save it as .xlsx in your spreadsheet program, and open that here.';

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

const choose = (name: string, bytes: Buffer): Promise<void> =>
  page.setInputFiles('#file', { name, mimeType: 'application/octet-stream', buffer: bytes });

const drop = async (name: string, bytes: Buffer): Promise<void> => {
  const dataTransfer = await page.evaluateHandle(
    ([name, base64]) => {
      const dropped = new DataTransfer();
      const letters = atob(base64);
      dropped.items.add(new File([Uint8Array.from(letters, (letter) => letter.charCodeAt(0))], name));
      return dropped;
    },
    [name, bytes.toString('base64')] as const,
  );
  await page.dispatchEvent('#grid', 'drop', { dataTransfer });
};

test('the file dialog offers it, so that it is answered and not only left out', async () => {
  expect((await page.getAttribute('#file', 'accept'))?.split(',')).toContain('.ods');
});

test.each([
  ['chosen', choose],
  ['dropped on the page', drop],
])('%s, it is refused in a sentence that says what to do, and the workbook stays', async (_how, give) => {
  await page.locator('#pane button', { hasText: 'Make the plant inventory' }).first().click();
  await page.locator('#pane .message').waitFor();
  const tabs = () => page.locator('#grid [role=tab], #grid .univer-slide-tab-item').allInnerTexts();
  const before = await tabs();
  await give('untidy-list.ods', LIST);
  const notice = page.getByRole('alert').filter({ hasText: 'untidy-list.ods' });
  await notice.waitFor();
  expect(await notice.innerText()).toContain(SAYS);
  expect(await page.locator('#file-name').innerText()).toBe('untidy-list.xlsx');
  expect(await page.locator('#file-state').isVisible()).toBe(true);
  expect(before.join(' ')).toContain('Plants');
  expect(await tabs()).toEqual(before);
  expect(troubles).toEqual([]);
});

test('an .xlsx that is dropped on the page is opened', async () => {
  await drop('dropped.xlsx', await smallList());
  await page.locator('#file-name', { hasText: 'dropped.xlsx' }).waitFor();
  expect(await page.locator('#pane .answer').innerText()).toContain('10 roses in 2 beds');
});
