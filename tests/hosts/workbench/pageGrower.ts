import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';

import type { Grower } from '../../taskpane/grower';

const escaped = (label: string) => label.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

/** At the pane of the delivered page. */
export const pageGrower = (page: Page): Grower => {
  const pane = page.locator('#pane');
  return {
    open: (stop) => pane.locator('.step', { hasText: new RegExp(`^${escaped(stop)}\\b`) }).click(),
    unfold: async (label) => {
      const fold = pane.locator('details', { has: page.locator('summary', { hasText: label }) });
      if ((await fold.getAttribute('open')) === null) await fold.locator('summary').click();
    },
    fill: async (label, text) => {
      const field = pane.getByLabel(label, { exact: true }).first();
      if ((await field.evaluate(({ tagName }) => tagName)) === 'SELECT') await field.selectOption(text);
      else await field.fill(text);
    },
    press: async (button) => {
      const message = pane.locator('.message');
      const close = message.getByRole('button', { name: 'Close' });
      if (await close.isVisible()) await close.click();
      await close.waitFor({ state: 'hidden' });
      await pane.getByRole('button', { name: button, exact: true }).first().click();
      await close.waitFor();
      const says = await message.locator('p').innerText();
      if (!/\bgood\b/.test((await message.getAttribute('class')) ?? ''))
        throw new Error(`“${button}”: ${says}`);
      return says;
    },
  };
};

/** The bytes that Save hands to the user. */
export const savedByPage = async (page: Page): Promise<Buffer> => {
  const [download] = await Promise.all([page.waitForEvent('download'), page.click('#save')]);
  return readFileSync(await download.path());
};

/** Opens a file as the user does, and waits until the pane knows it. */
export const openOnPage = async (page: Page, name: string, buffer: Buffer): Promise<void> => {
  await page.setInputFiles('#file', { name, mimeType: 'application/octet-stream', buffer });
  await page.locator('#file-name', { hasText: name }).waitFor();
};
