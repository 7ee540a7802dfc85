import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';

import { CHROMIUM } from '../chromium.mjs';
import { buildOffice, officeFolder } from '../office/buildOffice.mjs';
import { ensureCertificates } from '../office/certificates.mjs';
import { serveOffice } from '../office/serveOffice.mjs';
import { ensurePrograms, findProgram } from '../programs.mjs';

const RUNS = 5;
/** In place of the platform's own library, which is fetched from elsewhere: a program with an empty workbook. */
const PROGRAM = `(() => {
  const list = { load() {}, items: [] };
  const book = { worksheets: { ...list, getActiveWorksheet: () => ({ load() {}, name: '' }),
    onChanged: { add() {} }, onSelectionChanged: { add() {} }, onAdded: { add() {} }, onDeleted: { add() {} },
    onNameChanged: { add() {} } }, names: list, application: { load() {}, calculationState: 'Done' },
    getActiveCell: () => ({ load() {}, worksheet: { load() {}, name: '' }, address: 'A1', rowIndex: 0, columnIndex: 0,
      formulas: [['']], values: [['']], text: [['']] }) };
  const run = async (_options, batch) => batch({ workbook: book, sync: async () => {} });
  Object.assign(window, { Excel: { run }, CustomFunctions: { associate() {} },
    Office: { HostType: { Excel: 'Excel' }, onReady: async () => ({ host: 'Excel' }), actions: { associate() {} },
      context: { requirements: { isSetSupported: () => true },
      document: { settings: { get: () => null, set() {}, saveAsync() {} } } } } });
})();`;

const kilobytes = (bytes) => `${(bytes / 1000).toFixed(1)} kB`;

/** Milliseconds from the start of the page to the pane's first picture with its own words; the median of some runs. */
const firstPaint = async () => {
  const { chromium } = await import('playwright-core');
  const { files } = await ensureCertificates();
  const server = await serveOffice(officeFolder, 0, files);
  const browser = await chromium.launch({
    executablePath: findProgram('chromium'),
    headless: true,
    args: CHROMIUM,
  });
  const times = [];
  for (let run = 0; run < RUNS; run += 1) {
    const page = await browser.newPage({ ignoreHTTPSErrors: true, viewport: { width: 350, height: 800 } });
    await page.route('https://appsforoffice.microsoft.com/**', (route) =>
      route.fulfill({ contentType: 'text/javascript', body: PROGRAM }),
    );
    await page.goto(`${server.address}pane.html`);
    times.push(
      await page.evaluate(
        () =>
          new Promise((resolve) => {
            const look = () =>
              document.querySelector('.wandcount h2')
                ? requestAnimationFrame(() => resolve(performance.now()))
                : requestAnimationFrame(look);
            look();
          }),
      ),
    );
    await page.close();
  }
  await browser.close();
  await server.close();
  return times.sort((a, b) => a - b)[RUNS >> 1];
};

/** Sizes of the scripts, raw and compressed, and how soon the pane is seen. */
export const run = async (print) => {
  ensurePrograms(['chromium']);
  await buildOffice();
  for (const name of readdirSync(officeFolder).filter((file) => /\.(js|css)$/.test(file))) {
    const bytes = readFileSync(join(officeFolder, name));
    print(
      `${name.padEnd(14)} ${kilobytes(bytes.length).padStart(9)}, gzip ${kilobytes(gzipSync(bytes, { level: 9 }).length)}`,
    );
  }
  print(`the pane is first seen after ${(await firstPaint()).toFixed(0)} ms (median of ${RUNS})`);
};
