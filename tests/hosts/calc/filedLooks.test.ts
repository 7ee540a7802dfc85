import { copyFileSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';

import { openTestPage, type TestPage } from '../workbench/openTestPage';
import { workbookOf } from './books';
import { DRESSED, dressInBench, dressInCalc, WANTED, WIDTH, type Dress } from './filedLooks';
import { startOffice, type Office } from './office';

/* What lies on cells and beside them, through each kind of file. */

let office: Office;
let plain: Office;
let bench: TestPage;
beforeAll(async () => {
  office = await startOffice();
  plain = await startOffice({ extension: false });
  bench = await openTestPage();
});
afterAll(async () => {
  await Promise.all([office?.end(), plain?.end(), bench?.close()]);
});

const FILTERS = { xlsx: 'Calc MS Excel 2007 XML', ods: 'calc8' } as const;
type Ending = keyof typeof FILTERS;

const open = (program: Office, path: string) => program.ask<string>({ do: 'open_document', path });
const built = async (): Promise<string> => {
  const doc = await office.ask<string>({ do: 'open_document' });
  await workbookOf(office, doc).apply({ title: 'Dress', edits: DRESSED });
  return doc;
};
let files = 0;
const saved = async (program: Office, doc: string, ending: Ending): Promise<string> => {
  files += 1;
  const path = join(office.folder, `${files}.${ending}`);
  await program.ask({ do: 'store', doc, path, filter: FILTERS[ending] });
  return path;
};
/** Opened and saved by an office without the extension. */
const elsewhere = async (path: string, ending: Ending): Promise<string> => {
  const sent = join(office.folder, `sent.${ending}`);
  copyFileSync(path, sent);
  return saved(plain, await open(plain, sent), ending);
};

const WAYS: Readonly<Record<string, () => Promise<Dress>>> = {
  'in Calc': async () => dressInCalc(office, await built()),
  'in the workbench': async () => {
    await bench.call('open');
    await bench.call('apply', { title: 'Dress', edits: DRESSED });
    return dressInBench(bench);
  },
  'from the workbench by .xlsx in Calc': async () => {
    await bench.call('open');
    await bench.call('apply', { title: 'Dress', edits: DRESSED });
    const path = join(office.folder, 'bench.xlsx');
    writeFileSync(path, Buffer.from((await bench.call('saveFile')) as string, 'base64'));
    return dressInCalc(office, await open(office, path));
  },
  'from Calc by .xlsx in the workbench': async () => {
    const path = await saved(office, await built(), 'xlsx');
    expect(await bench.call('openFile', 'calc.xlsx', readFileSync(path).toString('base64'))).toEqual([]);
    return dressInBench(bench);
  },
  'from Calc by .xlsx in Calc': async () =>
    dressInCalc(office, await open(office, await saved(office, await built(), 'xlsx'))),
  'from Calc by .ods in Calc': async () =>
    dressInCalc(office, await open(office, await saved(office, await built(), 'ods'))),
  'by .xlsx opened and saved without the extension': async () =>
    dressInCalc(
      office,
      await open(office, await elsewhere(await saved(office, await built(), 'xlsx'), 'xlsx')),
    ),
  'by .ods opened and saved without the extension': async () =>
    dressInCalc(
      office,
      await open(office, await elsewhere(await saved(office, await built(), 'ods'), 'ods')),
    ),
};

test.each(Object.entries(WAYS))(
  'formats, looks, widths, freezes, lists, names, notes, merges, charts and pages, %s',
  async (_way, arrive) => {
    const { width, ...rest } = await arrive();
    expect(rest).toEqual(WANTED);
    expect(Math.abs(width - WIDTH)).toBeLessThanOrEqual(1);
  },
);
