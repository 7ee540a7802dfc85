import { mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';

import { dist, root } from '../../../addin/build/paths.mjs';
import { serve } from '../../../addin/build/serve.mjs';
import { buildWorkbench } from '../../../addin/build/targets.mjs';
import { cellAddress } from '../../../addin/workbook/address';
import { CARD } from '../../../addin/workbook/card/cardNames';
import { EARLIER_CARD } from '../../../addin/workbook/card/readCard';
import { tellsTheTruth, type CardHost } from '../aboveTheLabel';
import { goToCell, started, typeInCell } from './openPage';
import { sharedChromium, watchTroubles } from './openTestPage';
import { savedFile, type SavedFile } from './savedFile';

/* The delivered page: cells are typed into, the pane is pressed, and the file is read with what it keeps of formulas. */

const output = join(root, 'tests', 'output', 'workbench');
let context: BrowserContext;
let page: Page;
let server: Awaited<ReturnType<typeof serve>>;
let troubles: readonly string[];
/** The workbook as it was saved last; nothing while it has changed since. */
let saved: SavedFile | undefined;

const pane = () => page.locator('#pane');
const press = (name: string) => pane().getByRole('button', { name, exact: true }).click();
const save = async (): Promise<SavedFile> => {
  const download = page.waitForEvent('download');
  await page.locator('#save').click();
  saved = await savedFile(readFileSync(await (await download).path()));
  return saved;
};
const file = async (): Promise<SavedFile> => saved ?? save();
const openRound = () =>
  pane()
    .getByRole('button', { name: /^Round/ })
    .first()
    .click();

/** What was printed before. */
const takeViewAway = () => page.evaluate(() => document.querySelector('#print-view')?.remove());

/** What the page would hand to the system's printing. */
const print = async (): Promise<string> => {
  const view = page.locator('#print-view');
  await takeViewAway();
  await page.locator('#print').click();
  await view.waitFor({ state: 'attached' });
  const words = await view.locator('td').allTextContents();
  return words.join(' ').replace(/\s+/g, ' ');
};

const host: CardHost = {
  printed: async () => (await file()).texts(CARD),
  copies: async () => ({ print: await print() }),
  type: async (place, text) => {
    const [name = '', cell] = place.split('!');
    const named = cell === undefined ? (await file()).area(name) : undefined;
    await page.getByRole('tab', { name: named?.sheet ?? name, exact: true }).click();
    const at = cell ?? cellAddress(named!.row, named!.column);
    await goToCell(page, at);
    if (text === '') await page.keyboard.press('Delete');
    else await typeInCell(page, at, text);
    saved = undefined;
  },
  round: async () => {
    await openRound();
    const offered = await pane().getByRole('button', { name: 'Print the card', exact: true }).count();
    return { says: await pane().innerText(), prints: offered > 0 };
  },
  makeCard: async (reason) => {
    await openRound();
    if (reason !== undefined) {
      const field = pane().getByLabel('Why above the label?', { exact: true });
      await field.fill(reason);
      await field.blur();
    }
    await press('Make the card');
    await pane()
      .getByText(/^Made the card/)
      .first()
      .waitFor();
    saved = undefined;
  },
  picture: async (name) => {
    await page.getByRole('tab', { name: 'Round card', exact: true }).click();
    await page.screenshot({ path: join(output, `${name}.png`) });
    await print();
    await page.pdf({ format: 'Letter', preferCSSPageSize: true, path: join(output, `${name}.pdf`) });
  },
};

beforeAll(async () => {
  mkdirSync(output, { recursive: true });
  await buildWorkbench();
  server = await serve(join(dist, 'workbench'), 0);
  context = await (
    await sharedChromium()
  ).newContext({ viewport: { width: 1360, height: 850 }, acceptDownloads: true });
  page = await context.newPage();
  page.setDefaultTimeout(20_000);
  // No system dialog can be answered here: the file is handed over as a download, and nothing waits to be printed.
  await page.addInitScript(() => {
    Object.assign(window, {
      showSaveFilePicker: undefined,
      showOpenFilePicker: undefined,
      print: () => undefined,
    });
  });
  troubles = watchTroubles(page, server.address);
  const garden = readFileSync(join(root, 'sample-workbooks', 'garden.xlsx'));
  await page.route('**/samples/untidy-list.xlsx', (route) => route.fulfill({ body: garden }));
  await page.goto(server.address);
  await started(page);
});
afterAll(async () => {
  await context?.close();
  server?.close();
});

tellsTheTruth(() => host);

test('a card that an earlier program made is not printed, from the bar above the sheets either', async () => {
  await page
    .locator('#file')
    .setInputFiles(join(root, 'tests/workbook/earlier/before-live-card/whole-garden.workbench.xlsx'));
  await page.locator('#file-name', { hasText: 'whole-garden.workbench.xlsx' }).waitFor();
  await takeViewAway();
  await page.locator('#print').click();
  await page.locator('#notices').getByText(EARLIER_CARD).waitFor();
  expect(await page.locator('#print-view').count()).toBe(0);
  const { says, prints } = await host.round();
  expect(says).toContain(EARLIER_CARD);
  expect(prints).toBe(false);
  await page.screenshot({ path: join(output, 'above-6-earlier.png') });
});

test('nothing went wrong on the way', () => {
  expect(troubles).toEqual([]);
});
