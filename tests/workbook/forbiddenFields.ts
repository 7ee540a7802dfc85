import { litres } from '../../addin/core';
import { measure, number, remark } from '../../addin/workbook/fields/holds';
import type { Garden } from '../../addin/workbook/garden';
import { rigForm } from '../../addin/workbook/sheets/rig';
import { defineForm } from '../../addin/workbook/tables/form';
import { defineTable } from '../../addin/workbook/tables/table';
import { askForm } from '../../taskpane/askFields';
import type { PaneState } from '../../taskpane/state';

const table = { key: 'x', name: 'x', title: 'X', purpose: '', place: 'mix', reach: 9 } as const;
const form = { key: 'x', name: 'x', title: 'X', purpose: '', place: 'rig', complete: false } as const;
const ask = { label: 'X', under: '' };

/** Declarations and uses that must not compile: each would ask or read what nothing keeps. */
export const forbidden = [
  () =>
    defineTable({
      ...table,
      identity: [],
      // @ts-expect-error a column that the pane asks and the sheet works out: nothing would keep it
      columns: { x: { header: 'X', width: 9, formula: '=1', ask } },
    }),
  () =>
    defineForm({
      ...form,
      // @ts-expect-error a line that the pane asks and the sheet works out: nothing would keep it
      lines: { x: { name: 'X', label: 'X', what: '', formula: '=1', ask } },
    }),
  () =>
    defineForm({
      ...form,
      // @ts-expect-error a line that the pane asks and that holds nothing
      lines: { x: { name: 'X', label: 'X', what: '', ask } },
    }),
  () =>
    defineTable({
      ...table,
      // @ts-expect-error rows told apart by a column that is not there
      identity: ['name'],
      columns: { x: { header: 'X', width: 9, holds: remark } },
    }),
  // @ts-expect-error a measure of something whose units nobody chooses
  () => measure('area', { least: 0 }),
  // @ts-expect-error an end that is told as a text
  () => number({ least: '0' }),
  (state: PaneState, { rig, settings }: Garden) =>
    // @ts-expect-error a line of the rig that no form declares
    askForm(state, rigForm, rig, { section: 'rig', prefix: 'rig.', settings }).row.pumpLift,
  // @ts-expect-error a line that the sheet alone works out is no part of what is read
  ({ rig }: Garden) => rig.spread,
  // @ts-expect-error a measure with its unit taken for litres
  ({ rig }: Garden) => litres(rig.barrel),
];
