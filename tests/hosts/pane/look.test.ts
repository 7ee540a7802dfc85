import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import { root } from '../../../addin/build/paths.mjs';
import type { View } from '../../../taskpane/view';

import { journeyViews } from './journeyViews';
import { openPanePages, show, type PanePages, type Theme } from './openPanePage';

const pictures = join(root, 'tests', 'output', 'pane');
const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

let pages: PanePages;
let views: Readonly<Record<string, View>>;

beforeAll(async () => {
  mkdirSync(pictures, { recursive: true });
  [pages, views] = await Promise.all([openPanePages(), journeyViews()]);
});

afterAll(() => pages.close());

const faultsOf = async (page: Page): Promise<string[]> => {
  const results = await page.evaluate(
    (rules) =>
      (window as unknown as { axe: { run(options: object): Promise<AxeResults> } }).axe.run({
        runOnly: { type: 'tag', values: rules },
      }),
    RULES,
  );
  return results.violations.flatMap(({ id, help, nodes }) =>
    nodes.map(({ target }) => `${id}: ${help} (${target.join(' ')})`),
  );
};

/** The page as tall as all that the pane shows. */
const whole = async (page: Page, width: number): Promise<void> => {
  await page.setViewportSize({ width, height: 800 });
  const hidden = await page.evaluate(() => {
    const section = document.querySelector('.section');
    return section === null ? 0 : section.scrollHeight - section.clientHeight;
  });
  await page.setViewportSize({ width, height: 800 + hidden });
};

/** Parts of the pane that are wider than it; a table's own strip may be, and is scrolled. */
const cutOff = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    ['html', '.way', '.section', '.news'].filter((part) => {
      const element = document.querySelector(part);
      return element === null || element.scrollWidth > element.clientWidth;
    }),
  );

describe.each<Theme>(['light', 'dark'])('in the %s', (theme) => {
  test.each([320, 420])('at %d px nothing is cut off, and axe finds no fault in any view', async (width) => {
    const { page, troubles } = await pages.page(width, theme);
    for (const [name, view] of Object.entries(views)) {
      await show(page, view);
      await whole(page, width);
      if (view.section.blocks.some(({ kind }) => kind === 'chart'))
        await page.waitForFunction(() => document.querySelector('canvas')?.style.height !== '');
      expect(await faultsOf(page), `${name}, ${theme}, ${width} px`).toEqual([]);
      expect(await cutOff(page), `${name} at ${width} px`).toEqual([]);
      await page.screenshot({ path: join(pictures, `${name.replaceAll(' ', '-')}-${width}-${theme}.png`) });
    }
    expect(troubles).toEqual([]);
    await page.close();
  });
});

test('a page that says its theme is followed against the system', async () => {
  const { page } = await pages.page(320, 'light');
  await show(page, views['rig']!);
  const ground = () =>
    page.evaluate(() => getComputedStyle(document.querySelector('.wandcount')!).backgroundColor);
  const light = await ground();
  await page.evaluate(() => document.documentElement.setAttribute('data-theme', 'dark'));
  expect(await ground()).not.toBe(light);
  await page.close();
});
