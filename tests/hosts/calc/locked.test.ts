import { writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import type { Edit } from '../../../addin/workbook/change';
import { touchedBy } from '../../../addin/workbook/locks';
import type { PaneEvent } from '../../../taskpane/view';
import { contentsOf, workbookOf } from './books';
import { DRESSED, dressInCalc } from './dress';
import { MAIN_JOB, openList } from './mainJob';
import { sharedOffice, type Office } from './office';

/* Documents that do not take every change. LibreOffice itself heeds its locks in part, and says nothing of the rest. */

let office: Office;
beforeAll(async () => {
  office = await sharedOffice();
});
afterAll(async () => office.end());

const READ_ONLY =
  'This workbook is open for reading only. Open it for editing, or save a copy and open that, then try again.';
const STRUCTURE =
  "The workbook's structure is protected, so no sheet can be added. Take the protection off, then try again.";
const protectedSheet = (name: string): string =>
  `The sheet “${name}” is protected. Take the protection off, then try again.`;

/** All that a refused change must leave alone. */
const stateOf = async (doc: string) => ({
  ...(await contentsOf(workbookOf(office, doc))),
  undo: await office.ask<string[]>({ do: 'undo_titles', doc }),
  redo: await office.ask<string[]>({ do: 'redo_titles', doc }),
});

const isSheet = ({ kind }: Edit): boolean => kind === 'addSheet';
const goTo = (sheet: string): Edit => ({ kind: 'activate', sheet, row: 2, column: 0 });
const write = (sheet: string, ...cells: readonly (string | number)[]): Edit => ({
  kind: 'write',
  sheet,
  row: 0,
  column: 0,
  cells: [cells],
});
/** Formulas that are copied down, which LibreOffice writes into locked cells, too. */
const COPIED: Edit = {
  kind: 'write',
  sheet: 'Beds',
  row: 2,
  column: 4,
  cells: Array.from({ length: 12 }, (_, row) => [{ formula: `=B${row + 3}*2` }]),
};

describe('in the pane', () => {
  interface View {
    readonly pieces: readonly { readonly key: string; readonly tone?: string; readonly text?: string }[];
  }
  const press = async (doc: string, event: PaneEvent): Promise<readonly [tone?: string, text?: string]> => {
    const { pieces } = await office.ask<View>({ do: 'job', doc, request: { event } });
    const news = pieces.find(({ key }) => key === 'news');
    return [news?.tone, news?.text];
  };
  const [ADOPT, ...RIG] = MAIN_JOB.slice(
    0,
    MAIN_JOB.findIndex((e) => 'action' in e && e.action === 'rig.keep'),
  );
  const KEEP: PaneEvent = { kind: 'press', action: 'rig.keep' };

  test('a protected sheet is named, nothing is written, and without the protection the same press works', async () => {
    const doc = await openList(office);
    for (const event of [ADOPT!, ...RIG, KEEP]) await press(doc, event);
    await press(doc, { kind: 'type', field: 'rig.barrel', value: '55' });
    await office.ask({ do: 'protect', doc, sheet: 'Rig' });
    await office.ask({ do: 'undone', doc });
    const before = await stateOf(doc);
    expect(before.redo).toHaveLength(1);
    expect(await press(doc, KEEP)).toEqual(['warning', protectedSheet('Rig')]);
    expect(await stateOf(doc)).toEqual(before);
    await office.ask({ do: 'unprotect', doc, sheet: 'Rig' });
    expect((await press(doc, KEEP))[0]).toBe('good');
    expect(await stateOf(doc)).not.toMatchObject({ cells: before.cells });
  });

  test('a protected structure takes no new sheet, and without the protection the same press works', async () => {
    const doc = await openList(office);
    await office.ask({ do: 'protect', doc });
    const before = await stateOf(doc);
    expect(await press(doc, ADOPT!)).toEqual(['warning', STRUCTURE]);
    expect(await stateOf(doc)).toEqual(before);
    await office.ask({ do: 'unprotect', doc });
    expect((await press(doc, ADOPT!))[0]).toBe('good');
    expect((await stateOf(doc)).sheets).toContain('Plants');
  });

  test('a document open for reading only says so', async () => {
    const doc = await openList(office, { readOnly: true });
    const before = await stateOf(doc);
    expect(await press(doc, ADOPT!)).toEqual(['warning', READ_ONLY]);
    expect(await stateOf(doc)).toEqual(before);
  });
});

describe('a change', () => {
  const withSheets = async () => {
    const doc = await office.ask<string>({ do: 'open_document' });
    const workbook = workbookOf(office, doc);
    await workbook.apply({ title: 'Sheets', edits: DRESSED.filter(isSheet) });
    const refused = async (sentence: string, ...edits: readonly Edit[]): Promise<void> => {
      const before = await stateOf(doc);
      await expect(workbook.apply({ title: 'Change', edits })).rejects.toThrow(sentence);
      expect(await stateOf(doc)).toEqual(before);
    };
    return { doc, workbook, refused };
  };

  test('of any kind is not written to a protected sheet', async () => {
    const { doc, refused } = await withSheets();
    for (const sheet of ['Beds', 'Card']) await office.ask({ do: 'protect', doc, sheet });
    const dress = await dressInCalc(office, doc);
    for (const edit of [COPIED, ...DRESSED]) {
      const [sheet] = touchedBy([edit]).sheets;
      if (sheet !== undefined) await refused(protectedSheet(sheet), edit);
    }
    expect(await dressInCalc(office, doc)).toEqual(dress);
  });

  test('of two protected sheets names both', async () => {
    const { doc, refused } = await withSheets();
    for (const sheet of ['Beds', 'Card']) await office.ask({ do: 'protect', doc, sheet });
    await refused(
      'The sheets “Beds”, “Card” are protected. Take the protection off, then try again.',
      ...DRESSED.filter((edit) => !isSheet(edit)),
    );
  });

  test('is not kept out by a protected sheet that it does not write', async () => {
    const { doc, workbook } = await withSheets();
    await office.ask({ do: 'protect', doc, sheet: 'Card' });
    await workbook.apply({ title: 'Beds', edits: [write('Beds', 'East'), goTo('Card')] });
    expect((await stateOf(doc)).cells.get('Beds!0,0')).toEqual({ value: 'East' });
  });

  test('of a protected structure writes to the sheets that are there', async () => {
    const { doc, workbook } = await withSheets();
    await office.ask({ do: 'protect', doc });
    await workbook.apply({ title: 'Beds', edits: [write('Beds', 'East')] });
    expect((await stateOf(doc)).cells.get('Beds!0,0')).toEqual({ value: 'East' });
  });

  test('is kept out of a file that somebody else has open, and going to a cell is not', async () => {
    const { doc } = await withSheets();
    const path = join(office.folder, 'theirs.ods');
    await office.ask({ do: 'store', doc, path, filter: 'calc8' });
    const theirs = ',Bea,garden-pc,bea,27.11.2026 08:00,file:///garden-pc/bea/4;';
    writeFileSync(join(dirname(path), `.~lock.${basename(path)}#`), theirs);
    const held = await office.ask<string>({ do: 'open_document', path, asked: true });
    const workbook = workbookOf(office, held);
    const before = await stateOf(held);
    await expect(workbook.apply({ title: 'Copied', edits: [COPIED] })).rejects.toThrow(READ_ONLY);
    expect(await stateOf(held)).toEqual(before);
    await workbook.apply({ title: 'Go', edits: [goTo('Card')] });
    expect((await workbook.outline()).active).toBe('Card');
  });
});
