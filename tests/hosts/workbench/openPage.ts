import { join } from 'node:path';

import { Workbook as FileBook } from '@cj-tech-master/excelts';
import type { Browser, BrowserContext, Page, Route } from 'playwright-core';

import { dist } from '../../../addin/build/paths.mjs';
import { serve } from '../../../addin/build/serve.mjs';
import { buildWorkbench } from '../../../addin/build/targets.mjs';
import { sharedChromium, watchTroubles } from './openTestPage';

/** A small list such as a grower keeps, as the bytes of a file. */
export const smallList = async (): Promise<Buffer> => {
  const file = new FileBook();
  file.addWorksheet('My roses').addRows([
    ['Bed', 'Rose', 'Class', 'Size', 'How many'],
    ['East', 'Winter Lantern', 'Hybrid tea', 'large', 3],
    ['East', 'Copper Gate', 'Floribunda', 'bush', 2],
    ['West', 'Small Talk', 'Miniature', 'small', 5],
  ]);
  return Buffer.from(await file.xlsx.writeBuffer());
};

export interface OpenPage {
  readonly page: Page;
  readonly troubles: readonly string[];
}

export interface Workbenches {
  readonly browser: Browser;
  /** The delivered page, with the small list in place of the sample. */
  open(context: BrowserContext): Promise<OpenPage>;
  /** The same before its sheets are there: `grid` says what becomes of the request for them. */
  openWithout(context: BrowserContext, grid: (route: Route) => void): Promise<OpenPage>;
  close(): Promise<void>;
}

/** Waits until the page has opened its first file, looked for work that was not saved, and the sheets are there. */
export const started = (page: Page): Promise<void> =>
  page.locator('#main:not([aria-busy]) #grid:not([aria-busy])').waitFor();

/** Serves the delivered page as `npm start` does. */
export const serveWorkbench = async (): Promise<Workbenches> => {
  await buildWorkbench();
  const server = await serve(join(dist, 'workbench'), 0);
  const browser = await sharedChromium();
  const list = await smallList();
  const begin = async (context: BrowserContext, grid?: (route: Route) => void): Promise<OpenPage> => {
    const page = await context.newPage();
    const troubles = watchTroubles(page, server.address);
    await page.route('**/samples/untidy-list.xlsx', (route) => route.fulfill({ body: list }));
    if (grid) await page.route('**/grid.js', grid);
    await page.goto(server.address, { waitUntil: 'commit' });
    return { page, troubles };
  };
  return {
    browser,
    open: async (context) => {
      const opened = await begin(context);
      await started(opened.page);
      return opened;
    },
    openWithout: (context, grid) => begin(context, grid),
    close: async () => {
      server.close();
    },
  };
};

/** Goes to a cell by its address, as a user does in the box above the sheet. */
export const goToCell = async (page: Page, cell: string): Promise<void> => {
  const box = page.locator('[data-u-comp=defined-name] input');
  await box.fill(cell);
  await box.press('Enter');
};

/** Types into a cell and goes back to it. */
export const typeInCell = async (page: Page, cell: string, text: string): Promise<void> => {
  await goToCell(page, cell);
  await page.keyboard.type(text);
  await page.keyboard.press('Enter');
  await goToCell(page, cell);
};
