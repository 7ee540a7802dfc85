import { createHash } from 'node:crypto';
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { FrameLocator, Page } from 'playwright-core';

import { bundle } from '../../../addin/build/bundle.mjs';
import { unlessFresh } from '../../../addin/build/freshness.mjs';
import { buildOffice, officeFolder } from '../../../addin/build/office/buildOffice.mjs';
import { ensureCertificates } from '../../../addin/build/office/certificates.mjs';
import { serveOffice } from '../../../addin/build/office/serveOffice.mjs';
import { dist, root } from '../../../addin/build/paths.mjs';
import webpackWorkbench from '../../../addin/build/webpack.workbench.mjs';

import { sharedChromium } from '../workbench/openTestPage';

import { apiMembers } from './fake/apiMembers';

/** Where the platform's own library comes from; here the stub page's program takes its place. */
const PLATFORM = 'https://appsforoffice.microsoft.com/**';
const TAKES_ITS_PLACE = 'Object.assign(window, parent.program);';

const folder = join(dist, 'office-stub');
const entry = 'tests/hosts/office/stub/stubPage.ts';
const PAGE =
  '<!doctype html><html lang="en"><head><meta charset="utf-8"><link rel="icon" href="data:,"><title>Stub</title>' +
  '<link rel="stylesheet" href="workbench.css"></head><body><script src="workbench.js"></script></body></html>';

const build = async (): Promise<void> => {
  const hash = createHash('sha256');
  for (const name of ['stub', 'fake'])
    for (const file of readdirSync(join(root, 'tests/hosts/office', name)).sort())
      hash.update(readFileSync(join(root, 'tests/hosts/office', name, file)));
  const make = async (): Promise<void> => {
    await bundle(webpackWorkbench({ mode: 'development', entry, folder }));
    writeFileSync(join(folder, 'index.html'), PAGE);
    writeFileSync(join(folder, 'members.json'), JSON.stringify(apiMembers()));
    await buildOffice();
    rmSync(join(folder, 'addin'), { recursive: true, force: true });
    cpSync(officeFolder, join(folder, 'addin'), { recursive: true });
  };
  await unlessFresh('office-stub', make, hash.digest('hex'));
};

export interface StubPage {
  readonly page: Page;
  /** The add-in's page in its frame. */
  readonly pane: FrameLocator;
  /** Asks the stub around the add-in. */
  stub<T>(name: string, ...args: unknown[]): Promise<T>;
  /** What the pages said of errors, and asked for elsewhere. */
  readonly troubles: readonly string[];
  shoot(name: string): Promise<void>;
  close(): Promise<void>;
}

/** The production package in Chromium, on a page that does what a spreadsheet program does around it. */
export const openStub = async (): Promise<StubPage> => {
  await build();
  const temporary = mkdtempSync(join(tmpdir(), 'wandcount-stub-'));
  const { files } = (await ensureCertificates(temporary)) as {
    files: { ca: string; cert: string; key: string };
  };
  const server = (await serveOffice(folder, 0, files)) as { address: string; close(): Promise<void> };
  const viewport = { width: 1280, height: 800 };
  const context = await (await sharedChromium()).newContext({ ignoreHTTPSErrors: true, viewport });
  const page = await context.newPage();
  const troubles: string[] = [];
  page.on('pageerror', (error) => troubles.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') troubles.push(message.text());
  });
  page.on('request', (request) => {
    const url = request.url();
    const known = url.startsWith(server.address) || url.startsWith(PLATFORM.replace('**', ''));
    if (!known && !/^(data|blob):/.test(url)) troubles.push(`asked for ${url}`);
  });
  await page.route(PLATFORM, (route) =>
    route.fulfill({ contentType: 'text/javascript', body: TAKES_ITS_PLACE }),
  );
  await page.goto(server.address);
  await page
    .waitForFunction(() => 'stub' in window)
    .catch((reason: unknown) => {
      throw new Error(`The stub page did not start: ${troubles.join('; ')}`, { cause: reason });
    });
  const output = join(root, 'tests', 'output', 'office');
  mkdirSync(output, { recursive: true });
  return {
    page,
    pane: page.frameLocator('iframe'),
    troubles,
    stub: async (name, ...args) =>
      (await page.evaluate(
        ([name, args]) =>
          (window as unknown as { stub: Record<string, (...args: unknown[]) => unknown> }).stub[name]!(
            ...args,
          ),
        [name, args] as [string, unknown[]],
      )) as never,
    shoot: async (name) => {
      await page.screenshot({ path: join(output, `${name}.png`), animations: 'disabled' });
    },
    close: async () => {
      await context.close();
      await server.close();
      rmSync(temporary, { recursive: true, force: true });
    },
  };
};
