import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';

import { openTestPage, type TestPage } from '../workbench/openTestPage';
import { sheetOf } from './cells';
import { BOOK, built, ODS, openIn, SHEET, shown, store, XLSX } from './interchange';
import { startOffice, type Office } from './office';

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

describe('where the extension is missing', () => {
  const UNKNOWN = '#NAME?';
  const RIGHT = ['15', '3 3/4 cups', '20', '#VALUE!', '1.4', '3.5', '30', '3 3/4 cups!', 'known'];
  /** What is shown there before anything is computed, by the ending of the file. */
  const KEPT: Readonly<Record<string, readonly string[]>> = {
    xlsx: ['15', '3 3/4 cups', '20', UNKNOWN, '1.4', '3.5', '30', '3 3/4 cups!', 'known'],
    ods: [UNKNOWN, '3 3/4 cups', UNKNOWN, UNKNOWN, UNKNOWN, '3.5', UNKNOWN, '3 3/4 cups!', 'known'],
  };
  const COMPUTED = [...Array<string>(5).fill(UNKNOWN), '3.5', UNKNOWN, UNKNOWN, 'not known'];
  /** After A1 is 1.4 there: what depends on it, and only that, is computed. */
  const CHANGED: Readonly<Record<string, readonly string[]>> = {
    xlsx: [UNKNOWN, '3 3/4 cups', '20', UNKNOWN, UNKNOWN, '4.2', UNKNOWN, '3 3/4 cups!', 'not known'],
    ods: [UNKNOWN, '3 3/4 cups', UNKNOWN, UNKNOWN, UNKNOWN, '4.2', UNKNOWN, '3 3/4 cups!', 'not known'],
  };
  /** A formula over several cells. */
  const FILLED = { cells: 'D1:F4', formula: '=FEED.FILLPLAN(200;60;"gal")' };
  const filled = async (program: Office, doc: string): Promise<unknown> =>
    (await sheetOf(program, doc, SHEET).cells(FILLED.cells)).map((line) => line.map(({ shows }) => shows));
  const RIGHT_AGAIN = ['30', '3 3/4 cups', '20', '#VALUE!', '2.8', '4.2', '60', '3 3/4 cups!', 'known'];

  describe.each([XLSX, ODS])('an .$ending', ({ ending, filter }) => {
    let path: string;
    let elsewhere: string;
    const saved = async (name: string): Promise<string> => {
      const there = join(office.folder, `${name}.${ending}`);
      await store(plain, elsewhere, there, filter);
      return there;
    };
    beforeAll(async () => {
      const doc = await built(office);
      expect(await shown(office, doc)).toEqual(RIGHT);
      await office.ask({ do: 'put_array', doc, sheet: SHEET, ...FILLED });
      path = join(office.folder, `missing.${ending}`);
      await store(office, doc, path, filter);
    });
    beforeEach(async () => {
      elsewhere = await openIn(plain, path);
    });
    afterEach(async () => plain.ask({ do: 'close', doc: elsewhere }));

    test(`shows its last ${ending === 'xlsx' ? 'numbers and texts' : 'texts'}, also saved again`, async () => {
      expect(await shown(plain, elsewhere)).toEqual(KEPT[ending]);
      const again = await openIn(plain, await saved('again'));
      expect(await shown(plain, again)).toEqual(KEPT[ending]);
      await plain.ask({ do: 'close', doc: again });
    });

    test('shows #NAME? once everything is computed', async () => {
      await plain.ask({ do: 'calculate', doc: elsewhere });
      expect(await shown(plain, elsewhere)).toEqual(COMPUTED);
    });

    test('shows #NAME? in cells that one formula fills, and their values as soon as it is back', async () => {
      const line = [UNKNOWN, UNKNOWN, UNKNOWN];
      expect(await filled(plain, elsewhere)).toEqual([line, line, line, line]);
      const back = await openIn(office, await saved('filled'));
      expect(await filled(office, back)).toEqual([
        ['1', '60', '60'],
        ['2', '60', '60'],
        ['3', '60', '60'],
        ['4', '20', '20'],
      ]);
    });

    test('shows all its values as soon as it is back', async () => {
      expect(await shown(office, await openIn(office, await saved('back')))).toEqual(RIGHT);
    });

    test('takes an input there, and its values follow as soon as it is back', async () => {
      await sheetOf(plain, elsewhere, SHEET).values('A1', [[1.4]]);
      expect(await shown(plain, elsewhere)).toEqual(CHANGED[ending]);
      const back = await openIn(office, await saved('changed'));
      expect(await shown(office, back)).toEqual(RIGHT_AGAIN);
      expect(await office.ask<boolean>({ do: 'is_modified', doc: back })).toBe(false);
      expect(await office.ask<string[]>({ do: 'undo_titles', doc: back })).toEqual([]);
    });
  });

  test('an .xlsx of the workbench shows its last numbers and texts, and computes in the workbench again', async () => {
    await bench.call('open');
    await bench.call('apply', { title: 'Build', edits: BOOK });
    const path = join(office.folder, 'bench-there.xlsx');
    writeFileSync(path, Buffer.from((await bench.call('saveFile')) as string, 'base64'));
    const elsewhere = await openIn(plain, path);
    expect(await shown(plain, elsewhere)).toEqual(KEPT.xlsx);
    await sheetOf(plain, elsewhere, SHEET).values('A1', [[1.4]]);
    const back = join(office.folder, 'bench-back.xlsx');
    await store(plain, elsewhere, back, XLSX.filter);
    await bench.call('openFile', 'bench-back.xlsx', readFileSync(back).toString('base64'));
    const area = { sheet: SHEET, row: 0, column: 1, rows: 9, columns: 1 };
    const { blocks } = (await bench.call('read', [area])) as {
      blocks: { cells: { value: unknown; error?: string }[][] }[];
    };
    expect(blocks[0]!.cells.map(([cell]) => cell!.error ?? String(cell!.value))).toEqual(RIGHT_AGAIN);
  });
});
