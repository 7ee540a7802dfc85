import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Page } from 'playwright-core';

import { disturb, openPane, openPanePages, type PanePages } from './openPanePage';

let pages: PanePages;

beforeAll(async () => {
  pages = await openPanePages();
});

afterAll(() => pages.close());

const opened = async (): Promise<Page> => {
  const { page } = await pages.page(320, 'light');
  await openPane(page);
  await page.getByRole('button', { name: 'Make the plant inventory' }).waitFor();
  return page;
};

const tabTo = async (page: Page, name: string): Promise<void> => {
  const named = () => page.evaluate(() => document.activeElement?.textContent ?? '');
  for (let presses = 0; presses < 80; presses += 1) {
    if ((await named()) === name) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`“${name}” is not reached by Tab.`);
};

test('the inventory is made and undone by the keyboard alone', async () => {
  const page = await opened();
  await tabTo(page, 'Make the plant inventory');
  await page.keyboard.press('Enter');
  await page.getByRole('status').getByText('Made the plant inventory').waitFor();
  expect(await page.evaluate(() => document.activeElement?.tagName)).toBe('H2');
  await tabTo(page, 'Undo');
  await page.keyboard.press('Enter');
  await page.getByRole('status').getByText('Taken back').waitFor();
  await page.close();
});

test('Enter in a field keeps the rig; what is missing is told and the focus goes there', async () => {
  const page = await opened();
  await page.getByRole('button', { name: 'Make the plant inventory' }).click();
  await page.getByRole('button', { name: 'Go on to Rig' }).click();
  await page.getByLabel('Time 1').fill('46');
  await page.keyboard.press('Enter');
  await page.waitForFunction(() => document.activeElement?.getAttribute('aria-invalid') === 'true');
  expect(
    await page.evaluate(() => (document.activeElement as HTMLInputElement).labels?.[0]?.textContent),
  ).toBe('The barrel holds');
  await page.keyboard.type('60');
  await page.keyboard.press('Enter');
  await page.getByRole('status').getByText('Kept the rig').waitFor();
  await page.close();
});

test('a number is typed to its end while the workbook changes under it', async () => {
  const page = await opened();
  await page.getByRole('button', { name: 'Make the plant inventory' }).click();
  await page.getByRole('button', { name: 'Go on to Rig' }).click();
  const barrel = page.getByRole('textbox', { name: 'The barrel holds' });
  await barrel.focus();
  await disturb(page);
  await barrel.pressSequentially('1 1/2', { delay: 20 });
  expect(await barrel.inputValue()).toBe('1 1/2');
  expect(await barrel.evaluate((input) => input === document.activeElement)).toBe(true);
  await page.close();
});
