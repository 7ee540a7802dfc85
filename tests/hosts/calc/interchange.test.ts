import { copyFileSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import type { Edit } from '../../../addin/workbook/change';
import { openTestPage, type TestPage } from '../workbench/openTestPage';
import { contentsOf, differences, workbookOf } from './books';
import { sheetOf } from './cells';
import { sample } from './mainJob';
import { BOOK, built, column, ODS, openIn, SHEET, store, XLSX } from './interchange';
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

describe.each([XLSX, ODS])('a workbook saved as .$ending', ({ ending, filter }) => {
  let path: string;
  let doc: string;
  beforeAll(async () => {
    doc = await built(office);
    path = join(office.folder, `round.${ending}`);
    await store(office, doc, path, filter);
  });

  test('opens again with the same values, formulas, names', async () => {
    const again = await openIn(office, path);
    const [before, after] = [
      await contentsOf(workbookOf(office, doc)),
      await contentsOf(workbookOf(office, again)),
    ];
    expect(differences(before, after)).toEqual([]);
    expect(after.names).toEqual(before.names);
    expect(before.cells.size).toBe(18);
  });

  test('computes with other inputs', async () => {
    const again = await openIn(office, path);
    await sheetOf(office, again, SHEET).values('A1', [[1.4]]);
    const [seconds, , , , dose] = await column(office, again);
    expect(seconds!.value).toBeCloseTo(30, 9);
    expect(dose!.value).toBeCloseTo(2.8, 9);
  });

  test('loses no formula and no input where it is opened and saved without the extension', async () => {
    // A file of its own: the office locks what it has open.
    const sent = join(office.folder, `sent.${ending}`);
    copyFileSync(path, sent);
    const elsewhere = await openIn(plain, sent);
    const saved = join(office.folder, `elsewhere.${ending}`);
    await store(plain, elsewhere, saved, filter);
    await plain.ask({ do: 'close', doc: elsewhere });
    const back = await openIn(office, saved);
    await office.ask({ do: 'calculate', doc: back });
    const [before, after] = [
      await contentsOf(workbookOf(office, doc)),
      await contentsOf(workbookOf(office, back)),
    ];
    expect(differences(before, after)).toEqual([]);
  });
});

describe('formulas as Office hosts store them', () => {
  const stored = async (name: string): Promise<string> => {
    const path = join(office.folder, `${name}.xlsx`);
    await store(office, await built(office), path, XLSX.filter);
    const files = unzipSync(readFileSync(path));
    let changed = 0;
    for (const [name, bytes] of Object.entries(files)) {
      if (!/worksheets\/sheet\d+\.xml$/.test(name)) continue;
      const xml = strFromU8(bytes).replace(/<f[^>]*>[^<]*<\/f>/g, (formula) =>
        formula
          .split(/(&quot;.*?&quot;)/)
          .map((part, index) =>
            index % 2
              ? part
              : part.replace(/FEED\.([A-Z]+)\(/g, (_all, fn) => ((changed += 1), `_xldudf_FEED_${fn}(`)),
          )
          .join(''),
      );
      files[name] = strToU8(xml);
    }
    expect(changed).toBe(5);
    writeFileSync(path, zipSync(files));
    return path;
  };

  test('are recognised on opening, compute, and leave the document unmodified with nothing to undo', async () => {
    const doc = await openIn(office, await stored('recognised'));
    expect(await office.ask<boolean>({ do: 'is_modified', doc })).toBe(false);
    expect(await office.ask<string[]>({ do: 'undo_titles', doc })).toEqual([]);
    const cells = await column(office, doc);
    expect(cells.map(({ formula }) => formula)).toEqual([
      '=FEED.SECONDS(A1;"gal";Wand_flow;"gal/min")',
      '=FEED.MEASURE(60;"tbsp")',
      '=INDEX(FEED.FILLPLAN(200;60;"gal");4;2)',
      '=FEED.SECONDS("much";"gal";2;"gal/min")',
      '=IF(A1>0;FEED.DOSE(B1;2.8;"gal/min";"gal")*2;"FEED.DOSE(")',
      '=SUM(A1:A2)',
      '=B1*2',
      '=B2&"!"',
      '=IF(COUNT(B1)=1;"known";"not known")',
    ]);
    expect(cells[0]!.value).toBeCloseTo(15, 9);
    await sheetOf(office, doc, SHEET).values('A1', [[1.4]]);
    expect((await column(office, doc))[0]!.value).toBeCloseTo(30, 9);
  });

  test('in a text stay as they are', async () => {
    const doc = await openIn(office, await stored('texts'));
    expect((await sheetOf(office, doc, SHEET).cell('A4')).shows).toBe('says FEED.SECONDS(1,4)');
  });
});

describe('the workbench and Calc', () => {
  const benchBook = {
    outline: () => bench.call('outline'),
    read: (areas: unknown) => bench.call('read', areas),
    apply: (change: unknown) => bench.call('apply', change),
  };

  test('what the workbench saved computes in Calc', async () => {
    await bench.call('open');
    await bench.call('apply', { title: 'Build', edits: BOOK });
    const wanted = await contentsOf(benchBook);
    const path = join(office.folder, 'bench.xlsx');
    writeFileSync(path, Buffer.from((await bench.call('saveFile')) as string, 'base64'));
    const doc = await openIn(office, path);
    const workbook = workbookOf(office, doc);
    expect(differences(wanted, await contentsOf(workbook))).toEqual([]);
    await sheetOf(office, doc, SHEET).values('A1', [[1.4]]);
    expect((await column(office, doc))[0]!.value).toBeCloseTo(30, 9);
  });

  test.each(['garden.xlsx', 'tank-what-if.xlsx'])(
    '%s shows in Calc what it shows in the workbench',
    async (name) => {
      await bench.call('openFile', name, readFileSync(sample(name)).toString('base64'));
      const wanted = await contentsOf(benchBook);
      expect(
        [...wanted.cells.values()].filter(({ formula }) => formula?.includes('FEED.')).length,
      ).toBeGreaterThan(100);
      const path = join(office.folder, name);
      copyFileSync(sample(name), path);
      const doc = await openIn(office, path);
      expect(differences(wanted, await contentsOf(workbookOf(office, doc)))).toEqual([]);
      await office.ask({ do: 'calculate', doc });
      expect(differences(wanted, await contentsOf(workbookOf(office, doc)))).toEqual([]);
    },
  );

  test('what Calc saved as .xlsx computes in the workbench', async () => {
    const doc = await built(office);
    const path = join(office.folder, 'calc.xlsx');
    await store(office, doc, path, XLSX.filter);
    await bench.call('openFile', 'calc.xlsx', readFileSync(path).toString('base64'));
    expect(differences(await contentsOf(workbookOf(office, doc)), await contentsOf(benchBook))).toEqual([]);
    const area = { sheet: SHEET, row: 0, column: 0, rows: 1, columns: 2 };
    await bench.call('apply', { title: 'Feed more', edits: [{ kind: 'write', ...area, cells: [[1.4]] }] });
    const { blocks } = (await bench.call('read', [area])) as { blocks: { cells: { value: number }[][] }[] };
    expect(blocks[0]!.cells[0]![1]!.value).toBeCloseTo(30, 9);
  });

  describe('a formula that fills several cells', () => {
    const FILLS = '=FEED.FILLPLAN(B1,60,"gal")';
    const plan = (need: number) => [
      [1, 60, 60],
      [2, 60, 60],
      [3, 60, 60],
      [4, need - 180, need - 180],
    ];
    const EDITS: readonly Edit[] = [
      { kind: 'addSheet', sheet: SHEET },
      { kind: 'write', sheet: SHEET, row: 0, column: 0, cells: [['Need', 200]] },
      { kind: 'write', sheet: SHEET, row: 2, column: 3, cells: [[{ formula: FILLS }]] },
    ];
    const benchPlan = async (): Promise<unknown> => {
      const area = { sheet: SHEET, row: 2, column: 3, rows: 4, columns: 3 };
      const { blocks } = (await bench.call('read', [area])) as {
        blocks: { cells: { value: unknown; formula?: string }[][] }[];
      };
      expect(blocks[0]!.cells[0]![0]!.formula).toBe(FILLS);
      return blocks[0]!.cells.map((line) => line.map(({ value }) => value));
    };
    const needInBench = (need: number) =>
      bench.call('apply', {
        title: 'Need',
        edits: [{ kind: 'write', sheet: SHEET, row: 0, column: 1, cells: [[need]] }],
      });
    const calcPlan = async (doc: string): Promise<unknown> =>
      (await sheetOf(office, doc, SHEET).cells('D3:F6')).map((line) => line.map(({ value }) => value));

    test('of the workbench fills them in Calc, and again in the workbench', async () => {
      await bench.call('open');
      await bench.call('apply', { title: 'Build', edits: EDITS });
      expect(await benchPlan()).toEqual(plan(200));
      const bytes = (await bench.call('saveFile')) as string;
      const path = join(office.folder, 'bench-fills.xlsx');
      writeFileSync(path, Buffer.from(bytes, 'base64'));
      const doc = await openIn(office, path);
      expect(await calcPlan(doc)).toEqual(plan(200));
      await sheetOf(office, doc, SHEET).values('B1', [[230]]);
      expect(await calcPlan(doc)).toEqual(plan(230));
      await bench.call('openFile', 'bench-fills.xlsx', bytes);
      expect(await benchPlan()).toEqual(plan(200));
      await needInBench(230);
      expect(await benchPlan()).toEqual(plan(230));
    });

    test('of Calc fills them in the workbench', async () => {
      const doc = await office.ask<string>({ do: 'open_document' });
      await workbookOf(office, doc).apply({ title: 'Build', edits: EDITS.slice(0, 2) });
      const formula = FILLS.replaceAll(',', ';');
      await office.ask({ do: 'put_array', doc, sheet: SHEET, cells: 'D3:F6', formula });
      expect(await calcPlan(doc)).toEqual(plan(200));
      const path = join(office.folder, 'calc-fills.xlsx');
      await store(office, doc, path, XLSX.filter);
      await bench.call('openFile', 'calc-fills.xlsx', readFileSync(path).toString('base64'));
      expect(await benchPlan()).toEqual(plan(200));
      await needInBench(230);
      expect(await benchPlan()).toEqual(plan(230));
    });
  });
});
