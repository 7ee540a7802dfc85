import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import { createPane } from '../../../taskpane/pane';
import type { PaneEvent } from '../../../taskpane/view';
import { untidyList } from '../../../sample-workbooks/untidyList';
import { openTestPage, workbookIn, type TestPage } from '../workbench/openTestPage';
import { contentsOf, differences, workbookOf, type Contents } from './books';
import { LIST, MAIN_JOB, openList, sample } from './mainJob';
import { sharedOffice, type Office } from './office';

let office: Office;
let bench: TestPage;
let doc: string;
/** What the workbench makes of the same list with the same presses. */
let wanted: Contents;

const inWorkbench = async (): Promise<Contents> => {
  bench = await openTestPage();
  await bench.call('openFile', 'untidy-list.xlsx', readFileSync(sample('untidy-list.xlsx'), 'base64'));
  const benchBook = workbookIn(bench);
  const pane = createPane(benchBook, { today: () => '2026-05-03', measures: 'US' });
  await pane.dispatch({ kind: 'selected', sheet: LIST, row: 0, column: 0 });
  for (const event of MAIN_JOB) {
    await pane.dispatch(event);
    expect(pane.view().message?.tone ?? 'good', pane.view().message?.text).toBe('good');
  }
  return contentsOf(benchBook);
};

interface View {
  readonly pieces: readonly { readonly key: string; readonly tone?: string; readonly text?: string }[];
}
const happens = (event: PaneEvent) => office.ask<View>({ do: 'job', doc, request: { event } });

beforeAll(async () => {
  wanted = await inWorkbench();
  office = await sharedOffice();
  doc = await openList(office);
});
afterAll(async () => {
  await Promise.all([office?.end(), bench?.close()]);
});

/** What the whole job leaves in the workbook. */
const SHEETS = [
  LIST,
  'Plants',
  'Beds',
  'Doses',
  'Rig',
  'Products',
  'Mix',
  'Settings',
  'Round card',
  'Feed log',
  'Product use',
  'Tank what-if',
];

describe('from an untidy list to card and log, in Calc', () => {
  test('the list that is opened is the grower’s', async () => {
    const [title] = untidyList().merges;
    const { sheets } = await workbookOf(office, doc).outline();
    expect(sheets).toMatchObject([{ name: LIST, merges: [{ sheet: LIST, ...title }] }]);
    const kept = new Map(
      untidyList().cells.flatMap((line, row) =>
        line.flatMap((value, column) =>
          value === null || value === '' ? [] : [[`${LIST}!${row},${column}`, { value }] as const],
        ),
      ),
    );
    expect((await contentsOf(workbookOf(office, doc))).cells).toEqual(kept);
  });

  test('every step does what it says', async () => {
    for (const event of MAIN_JOB) {
      const { pieces } = await happens(event);
      const news = pieces.find(({ key }) => key === 'news');
      expect(news?.tone ?? 'good', news?.text).toBe('good');
    }
    expect((await contentsOf(workbookOf(office, doc))).sheets).toEqual(SHEETS);
  });

  test('each press was one step of the undo', async () => {
    const steps = MAIN_JOB.filter(({ kind }) => kind === 'press').length;
    expect(await office.ask<string[]>({ do: 'undo_titles', doc })).toHaveLength(steps);
  });

  test('the sheets are the workbench’s, cell by cell', async () => {
    const found = await contentsOf(workbookOf(office, doc));
    expect(wanted.sheets).toEqual(SHEETS);
    expect(new Set([...wanted.cells.keys()].map((place) => place.split('!')[0]))).toEqual(new Set(SHEETS));
    expect(
      [...wanted.cells.values()].filter(({ formula }) => formula?.includes('FEED.')).length,
    ).toBeGreaterThan(100);
    expect([...wanted.cells].filter(([, { error }]) => error)).toEqual([]);
    expect(found.names).toEqual(wanted.names);
    expect(differences(wanted, found)).toEqual([]);
  });

  test.each([
    ['ods', 'calc8'],
    ['xlsx', 'Calc MS Excel 2007 XML'],
  ])('saved as .%s and opened again they still are', async (ending, filter) => {
    const path = join(office.folder, `fed.${ending}`);
    await office.ask({ do: 'store', doc, path, filter });
    const again = await office.ask<string>({ do: 'open_document', path });
    const found = await contentsOf(workbookOf(office, again));
    expect(found.names).toEqual(wanted.names);
    expect(differences(wanted, found)).toEqual([]);
    await office.ask({ do: 'close', doc: again });
  });

  test('a dose changed in its cell changes the card', async () => {
    const workbook = workbookOf(office, doc);
    const card = async (): Promise<Contents> => contentsOf(workbook);
    const before = await card();
    const doses = (await workbook.outline()).names;
    const [place] = [...before.cells].find(([at, { value }]) => at.startsWith('Doses!') && value === 0.75)!;
    const [row, column] = place.split('!')[1]!.split(',').map(Number) as [number, number];
    await workbook.apply({
      title: 'More for large bushes',
      edits: [{ kind: 'write', sheet: 'Doses', row, column, cells: [[1]] }],
    });
    const after = await card();
    const changed = [...after.cells].filter(
      ([at, { value }]) => at.startsWith('Round card!') && before.cells.get(at)?.value !== value,
    );
    expect(changed.length).toBeGreaterThan(5);
    expect(after.names).toEqual(doses);
    await office.ask({ do: 'undo', doc });
    expect(differences(before, await card())).toEqual([]);
  });

  test('the card’s rows are as high as what they show, and no higher', async () => {
    const heights = await office.ask<number[][]>({ do: 'row_heights', doc, sheet: 'Round card', rows: 40 });
    expect(heights[0]).toEqual(heights[1]);
  });

  test('taking every step back leaves the list as it was', async () => {
    const list = (contents: Contents) => [...contents.cells].filter(([at]) => at.startsWith(`${LIST}!`));
    const before = list(await contentsOf(workbookOf(office, doc)));
    const steps = await office.ask<string[]>({ do: 'undo_titles', doc });
    for (let step = 0; step < steps.length; step += 1) await office.ask({ do: 'undo', doc });
    const after = await contentsOf(workbookOf(office, doc));
    expect(after.sheets).toEqual([LIST]);
    expect(after.names).toEqual({});
    expect(list(after)).toEqual(before);
    expect(after.cells.size).toBe(before.length);
  });
});

describe('two documents at once', () => {
  test('each has a pane of its own', async () => {
    const [one, two] = [await openList(office), await office.ask<string>({ do: 'open_document' })];
    const told = async (key: string, event: PaneEvent) =>
      (await office.ask<View>({ do: 'job', doc: key, request: { event } })).pieces
        .map(({ text }) => text)
        .join('\n');
    expect(await told(one, { kind: 'open', section: 'garden' })).toContain('350 roses in 14 beds');
    expect(await told(two, { kind: 'open', section: 'garden' })).toContain('no list of roses yet');
    await told(one, { kind: 'press', action: 'garden.adopt' });
    expect(await office.ask<string[]>({ do: 'sheet_names', doc: two })).toEqual(['Sheet1']);
    expect(await told(two, { kind: 'open', section: 'rig' })).toContain('The garden comes first');
    expect(await told(one, { kind: 'open', section: 'rig' })).toContain('Time a bucket');
    await office.ask({ do: 'close', doc: one });
    expect(await told(two, { kind: 'open', section: 'garden' })).toContain('no list of roses yet');
  });
});
