import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

import { Workbook as FileBook } from '@cj-tech-master/excelts';

import { openOnPage, pageGrower, savedByPage } from '../workbench/pageGrower';
import { serveWorkbench } from '../workbench/openPage';
import { openTestPage, workbookIn } from '../workbench/openTestPage';
import { LIST, ROSES, type GardenName } from './garden';
import type { Program, Sheets } from './program';

/** The list as another program saved it. */
const listFile = async (): Promise<Buffer> => {
  const file = new FileBook();
  const sheet = file.addWorksheet(LIST);
  sheet.addRows(ROSES.map((line) => [...line]));
  sheet.mergeCells('A1:H1');
  return Buffer.from(await file.xlsx.writeBuffer());
};

/** The delivered page in Chromium; the work on sheets is done in its grid alone, by the grid's own commands. */
export const workbench = async (folder: string): Promise<Program> => {
  const benches = await serveWorkbench();
  const context = await benches.browser.newContext({
    viewport: { width: 1360, height: 850 },
    locale: 'en-US',
    acceptDownloads: true,
  });
  // A browser without file dialogs saves into its downloads.
  await context.addInitScript(() => {
    delete (window as { showSaveFilePicker?: unknown }).showSaveFilePicker;
  });
  const { page, troubles } = await benches.open(context);
  page.setDefaultTimeout(20_000);
  const path = (garden: GardenName) => join(folder, `${garden}.workbench.xlsx`);
  const put = async (name: string, bytes: Buffer) => {
    await openOnPage(page, name, bytes);
    return pageGrower(page);
  };
  return {
    list: async () => put('roses.xlsx', await listFile()),
    emptyWorkbook: async () => {
      await page.click('#more');
      await page.click('#new');
      await page.locator('#file-name', { hasText: 'garden.xlsx' }).waitFor();
      return pageGrower(page);
    },
    open: (garden) => put(`${garden}.xlsx`, readFileSync(path(garden))),
    save: async (garden) => writeFileSync(path(garden), await savedByPage(page)),
    rework: async (garden, as, work) => {
      const bench = await openTestPage();
      try {
        await bench.call('openFile', 'garden.xlsx', readFileSync(path(garden), 'base64'));
        const call =
          (name: string) =>
          async (...args: unknown[]): Promise<void> =>
            void (await bench.call(name, ...args));
        const sheets: Sheets = {
          workbook: workbookIn(bench),
          type: call('type'),
          insertRows: call('insertRows'),
          insertColumns: call('insertColumns'),
          addSheet: call('addSheet'),
          renameSheet: call('renameSheet'),
          moveSheet: call('moveSheet'),
        };
        await work(sheets);
        writeFileSync(path(as), Buffer.from((await bench.call('saveFile')) as string, 'base64'));
      } finally {
        await bench.close();
      }
    },
    end: async () => {
      await benches.close();
      if (troubles.length > 0) throw new Error(`The page told of troubles: ${troubles.join('; ')}`);
    },
  };
};
