import { copyFileSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';

import type { Edit } from '../../../addin/workbook/change';
import { openTestPage, type TestPage } from '../workbench/openTestPage';
import { contentsOf, differences, workbookOf } from './books';
import { sheetOf, type Cell } from './cells';
import { sample } from './mainJob';
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

const XLSX = { ending: 'xlsx', filter: 'Calc MS Excel 2007 XML' };
const ODS = { ending: 'ods', filter: 'calc8' };
const SHEET = 'Round';

/**
 * A number, a text, one value of an array function, an error, our function in an expression, a native formula, native
 * formulas of ours that pass an error on, and one that makes something of it.
 */
const BOOK: readonly Edit[] = [
  { kind: 'addSheet', sheet: SHEET },
  {
    kind: 'write',
    sheet: SHEET,
    row: 0,
    column: 0,
    cells: [
      [0.7, { formula: '=FEED.SECONDS(A1,"gal",Wand_flow,"gal/min")' }],
      [2.8, { formula: '=FEED.MEASURE(60,"tbsp")' }],
      ['=1+1', { formula: '=INDEX(FEED.FILLPLAN(200,60,"gal"),4,2)' }],
      ['says FEED.SECONDS(1,4)', { formula: '=FEED.SECONDS("much","gal",2,"gal/min")' }],
      [true, { formula: '=IF(A1>0,FEED.DOSE(B1,2.8,"gal/min","gal")*2,"FEED.DOSE(")' }],
      [45_000, { formula: '=SUM(A1:A2)' }],
      [1, { formula: '=B1*2' }],
      [1, { formula: '=B2&"!"' }],
      [1, { formula: '=IF(COUNT(B1)=1,"known","not known")' }],
    ],
  },
  { kind: 'name', name: 'Wand_flow', area: { sheet: SHEET, row: 1, column: 0, rows: 1, columns: 1 } },
];

const open = (program: Office, path: string) => program.ask<string>({ do: 'open_document', path });
const store = (program: Office, doc: string, path: string, filter: string) =>
  program.ask({ do: 'store', doc, path, filter });
const column = (program: Office, doc: string): Promise<Cell[]> =>
  program
    .ask<Cell[][]>({ do: 'cells', doc, sheet: SHEET, cells: 'B1:B9' })
    .then((rows) => rows.map(([cell]) => cell!));
const shown = async (program: Office, doc: string): Promise<string[]> =>
  (await column(program, doc)).map(({ shows }) => shows);

const built = async (): Promise<string> => {
  const doc = await office.ask<string>({ do: 'open_document' });
  await workbookOf(office, doc).apply({ title: 'Build', edits: BOOK });
  return doc;
};

describe.each([XLSX, ODS])('a workbook saved as .$ending', ({ ending, filter }) => {
  let path: string;
  let doc: string;
  beforeAll(async () => {
    doc = await built();
    path = join(office.folder, `round.${ending}`);
    await store(office, doc, path, filter);
  });

  test('opens again with the same values, formulas, names', async () => {
    const again = await open(office, path);
    const [before, after] = [
      await contentsOf(workbookOf(office, doc)),
      await contentsOf(workbookOf(office, again)),
    ];
    expect(differences(before, after)).toEqual([]);
    expect(after.names).toEqual(before.names);
    expect(before.cells.size).toBe(18);
  });

  test('computes with other inputs', async () => {
    const again = await open(office, path);
    await sheetOf(office, again, SHEET).values('A1', [[1.4]]);
    const [seconds, , , , dose] = await column(office, again);
    expect(seconds!.value).toBeCloseTo(30, 9);
    expect(dose!.value).toBeCloseTo(2.8, 9);
  });

  test('loses no formula and no input where it is opened and saved without the extension', async () => {
    // A file of its own: the office locks what it has open.
    const sent = join(office.folder, `sent.${ending}`);
    copyFileSync(path, sent);
    const elsewhere = await open(plain, sent);
    const saved = join(office.folder, `elsewhere.${ending}`);
    await store(plain, elsewhere, saved, filter);
    await plain.ask({ do: 'close', doc: elsewhere });
    const back = await open(office, saved);
    await office.ask({ do: 'calculate', doc: back });
    const [before, after] = [
      await contentsOf(workbookOf(office, doc)),
      await contentsOf(workbookOf(office, back)),
    ];
    expect(differences(before, after)).toEqual([]);
  });
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
      const doc = await built();
      expect(await shown(office, doc)).toEqual(RIGHT);
      path = join(office.folder, `missing.${ending}`);
      await store(office, doc, path, filter);
    });
    beforeEach(async () => {
      elsewhere = await open(plain, path);
    });
    afterEach(async () => plain.ask({ do: 'close', doc: elsewhere }));

    test(`shows its last ${ending === 'xlsx' ? 'numbers and texts' : 'texts'}, also saved again`, async () => {
      expect(await shown(plain, elsewhere)).toEqual(KEPT[ending]);
      const again = await open(plain, await saved('again'));
      expect(await shown(plain, again)).toEqual(KEPT[ending]);
      await plain.ask({ do: 'close', doc: again });
    });

    test('shows #NAME? once everything is computed', async () => {
      await plain.ask({ do: 'calculate', doc: elsewhere });
      expect(await shown(plain, elsewhere)).toEqual(COMPUTED);
    });

    test('shows all its values as soon as it is back', async () => {
      expect(await shown(office, await open(office, await saved('back')))).toEqual(RIGHT);
    });

    test('takes an input there, and its values follow as soon as it is back', async () => {
      await sheetOf(plain, elsewhere, SHEET).values('A1', [[1.4]]);
      expect(await shown(plain, elsewhere)).toEqual(CHANGED[ending]);
      const back = await open(office, await saved('changed'));
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
    const elsewhere = await open(plain, path);
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

describe('formulas as Office hosts store them', () => {
  const stored = async (name: string): Promise<string> => {
    const path = join(office.folder, `${name}.xlsx`);
    await store(office, await built(), path, XLSX.filter);
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
    const doc = await open(office, await stored('recognised'));
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
    const doc = await open(office, await stored('texts'));
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
    const doc = await open(office, path);
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
      const doc = await open(office, path);
      expect(differences(wanted, await contentsOf(workbookOf(office, doc)))).toEqual([]);
      await office.ask({ do: 'calculate', doc });
      expect(differences(wanted, await contentsOf(workbookOf(office, doc)))).toEqual([]);
    },
  );

  test('what Calc saved as .xlsx computes in the workbench', async () => {
    const doc = await built();
    const path = join(office.folder, 'calc.xlsx');
    await store(office, doc, path, XLSX.filter);
    await bench.call('openFile', 'calc.xlsx', readFileSync(path).toString('base64'));
    expect(differences(await contentsOf(workbookOf(office, doc)), await contentsOf(benchBook))).toEqual([]);
    const area = { sheet: SHEET, row: 0, column: 0, rows: 1, columns: 2 };
    await bench.call('apply', { title: 'Feed more', edits: [{ kind: 'write', ...area, cells: [[1.4]] }] });
    const { blocks } = (await bench.call('read', [area])) as { blocks: { cells: { value: number }[][] }[] };
    expect(blocks[0]!.cells[0]![1]!.value).toBeCloseTo(30, 9);
  });
});
