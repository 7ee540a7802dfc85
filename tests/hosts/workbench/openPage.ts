import { join } from 'node:path';

import { Workbook as FileBook } from '@cj-tech-master/excelts';
import type { Browser, BrowserContext, Page } from 'playwright-core';

import { dist } from '../../../addin/build/paths.mjs';
import { serve } from '../../../addin/build/serve.mjs';
import { buildWorkbench } from '../../../addin/build/targets.mjs';
import { launchChromium, watchTroubles } from './openTestPage';

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
  close(): Promise<void>;
}

/** Serves the delivered page as `npm start` does. */
export const serveWorkbench = async (): Promise<Workbenches> => {
  await buildWorkbench();
  const server = await serve(join(dist, 'workbench'), 0);
  const browser = await launchChromium();
  const list = await smallList();
  return {
    browser,
    open: async (context) => {
      const page = await context.newPage();
      const troubles = watchTroubles(page, server.address);
      await page.route('**/samples/untidy-list.xlsx', (route) => route.fulfill({ body: list }));
      await page.goto(server.address);
      await page.locator('#pane .answer').waitFor();
      return { page, troubles };
    },
    close: async () => {
      await browser.close();
      server.close();
    },
  };
};

/** Where a cell of the grid is drawn while nothing is scrolled, for columns and rows of the usual size. */
export const cellOnScreen = async (
  page: Page,
  row: number,
  column: number,
): Promise<{ x: number; y: number }> => {
  const box = await page.locator('canvas[id^=univer-sheet-main-canvas]').boundingBox();
  if (!box) throw new Error('The grid is not drawn.');
  return { x: box.x + 46 + 88 * column + 44, y: box.y + 20 + 24 * row + 12 };
};

/** Types into a cell as a user does, and goes back to it. */
export const typeInCell = async (page: Page, row: number, column: number, text: string): Promise<void> => {
  const { x, y } = await cellOnScreen(page, row, column);
  await page.mouse.click(x, y);
  await page.keyboard.type(text);
  await page.keyboard.press('Enter');
  await page.mouse.click(x, y);
};
