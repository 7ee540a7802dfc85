import { afterAll, beforeAll, expect, test } from 'vitest';

import { plannedWrites } from '../../../addin/hosts/calc/plannedWrites';
import type { Operation } from '../../../addin/hosts/calc/wire/operations';
import type { Edit } from '../../../addin/workbook/change';
import { touchedBy } from '../../../addin/workbook/locks';
import { contentsOf, workbookOf } from './books';
import { DRESSED, dressInCalc } from './dress';
import { sharedOffice, type Office } from './office';

/* Writes that fail half way: the document is as it was, and nothing of them is left to undo or redo. */

let office: Office;
beforeAll(async () => {
  office = await sharedOffice();
});
afterAll(async () => office.end());

const before: readonly Edit[] = [
  ...DRESSED.filter(({ kind }) => kind === 'addSheet'),
  { kind: 'write', sheet: 'Beds', row: 0, column: 0, cells: [['Old', null, { formula: '=1+1' }, true]] },
];
/** Overwrites old cells, fills empty ones, dresses them, and adds a sheet. */
const begun: readonly Edit[] = [
  { kind: 'addSheet', sheet: 'New' },
  { kind: 'write', sheet: 'New', row: 0, column: 0, cells: [[1, 2]] },
  ...DRESSED.filter(({ kind }) => kind !== 'addSheet' && kind !== 'page' && kind !== 'freeze'),
];
const change = { title: 'Half of it', edits: begun };

const half = plannedWrites(change);
const missing: Operation = { op: 'values', area: ['Gone', 0, 0, 1, 1], cells: [[1]] };
const unheard = { op: 'unheard' } as unknown as Operation;
const gone: Operation = { op: 'active', sheet: 'Gone', row: 0, column: 0 };

test.each([
  ['a sheet that is gone, after half of the change', [...half, missing]],
  ['a write that Calc does not know, after half of the change', [...half, unheard]],
  ['a view of a sheet that is gone, after all of the change', [...half, gone]],
  ['a sheet that is gone, before anything is written', [missing, ...half]],
])('%s', async (_why, operations) => {
  const doc = await office.ask<string>({ do: 'open_document' });
  const workbook = workbookOf(office, doc);
  await workbook.apply({ title: 'Before', edits: before });
  const state = async () => ({
    ...(await contentsOf(workbook)),
    dress: await dressInCalc(office, doc),
    undo: await office.ask<string[]>({ do: 'undo_titles', doc }),
    redo: await office.ask<string[]>({ do: 'redo_titles', doc }),
  });
  const was = await state();
  expect([was.undo, was.redo]).toEqual([['Before'], []]);
  const request = { what: 'apply', title: change.title, touched: touchedBy(begun), operations };
  await expect(office.ask({ do: 'job', doc, request })).rejects.toThrow();
  expect(await state()).toEqual(was);
  await workbook.apply(change);
  const after = await state();
  expect(after.sheets).toContain('New');
  expect(after.dress.charts).toEqual(['Roses by bed, 1']);
  expect([after.undo, after.redo]).toEqual([['Half of it', 'Before'], []]);
});
