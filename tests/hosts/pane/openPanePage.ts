import { copyFileSync, mkdirSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { build } from 'esbuild';
import type { BrowserContext, Page } from 'playwright-core';

import { dist, root } from '../../../addin/build/paths.mjs';
import { serve } from '../../../addin/build/serve.mjs';
import type { View } from '../../../taskpane/view';
import { sharedChromium, watchTroubles } from '../workbench/openTestPage';

const folder = join(dist, 'pane-test');
const HTML = `<!doctype html>
<html lang="en">
  <head>
    <meta charset="utf-8">
    <meta name="viewport" content="width=device-width">
    <link rel="icon" href="data:,">
    <title>Wandcount</title>
    <link rel="stylesheet" href="pane.css">
    <style>html, body, main, #pane { height: 100%; margin: 0 }</style>
    <script src="axe.min.js" defer></script>
    <script type="module" src="panePage.js"></script>
  </head>
  <body>
    <main>
      <h1 style="position: absolute; clip-path: inset(50%)">Wandcount</h1>
      <div id="pane"></div>
    </main>
  </body>
</html>
`;

const bundlePage = async (): Promise<void> => {
  mkdirSync(folder, { recursive: true });
  await build({
    entryPoints: [join(root, 'tests/hosts/pane/panePage.ts')],
    outdir: folder,
    bundle: true,
    splitting: true,
    format: 'esm',
    logLevel: 'warning',
  });
  copyFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), join(folder, 'axe.min.js'));
  copyFileSync(join(root, 'taskpane/pane.css'), join(folder, 'pane.css'));
  writeFileSync(join(folder, 'index.html'), HTML);
};

export type Theme = 'light' | 'dark';

export interface PanePages {
  /** A page of that width, with what it should not have done. */
  page(width: number, theme: Theme): Promise<{ page: Page; troubles: readonly string[] }>;
  close(): Promise<void>;
}

/** The pane alone in Chromium, under the policy that the workbench is served with. */
export const openPanePages = async (): Promise<PanePages> => {
  await bundlePage();
  const server = await serve(folder, 0);
  const browser = await sharedChromium();
  const contexts: BrowserContext[] = [];
  return {
    page: async (width, theme) => {
      const context = await browser.newContext({ viewport: { width, height: 800 }, colorScheme: theme });
      contexts.push(context);
      const page = await context.newPage();
      const troubles = watchTroubles(page, server.address);
      await page.goto(server.address);
      await page.waitForFunction(() => 'panePage' in window && 'axe' in window);
      return { page, troubles };
    },
    close: async () => {
      await Promise.all(contexts.map((context) => context.close()));
      server.close();
    },
  };
};

export const show = (page: Page, view: View): Promise<void> =>
  page.evaluate(
    (view) => (window as unknown as { panePage: { show(view: unknown): void } }).panePage.show(view),
    view as unknown,
  );

/** Has the workbook change under the pane until the page is closed. */
export const disturb = (page: Page): Promise<void> =>
  page.evaluate(() => (window as unknown as { panePage: { disturb(): void } }).panePage.disturb());

export const openPane = (page: Page): Promise<void> =>
  page.evaluate(() => (window as unknown as { panePage: { open(): void } }).panePage.open());
