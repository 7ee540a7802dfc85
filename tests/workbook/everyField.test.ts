import { describe, expect, test } from 'vitest';
import { logSheets } from '../../addin/workbook/log/logRound';
import { memoryWorkbook } from '../../addin/workbook/memoryWorkbook';
import { areasOf } from '../../addin/workbook/readGarden';
import { gardenSheets } from '../../addin/workbook/sheets/gardenSheets';
import { placeSheets } from '../../addin/workbook/tables/buildSheets';
import { type SheetSet } from '../../addin/workbook/tables/layOut';
import { linesOf, lineValues, offered, type Form } from '../../addin/workbook/tables/form';
import { readForm } from '../../addin/workbook/tables/readForm';
import { readTable } from '../../addin/workbook/tables/readTable';
import { rowCells, unitKey, type Table } from '../../addin/workbook/tables/table';
import { trialOf } from '../fieldTrials';

const sets = [gardenSheets, logSheets];
const formsOf = (set: SheetSet): Form[] =>
  set.sheets.flatMap((entry) => (entry.kind === 'form' ? [entry.form] : []));
const tablesOf = (set: SheetSet): Table[] =>
  set.sheets.flatMap((entry) => (entry.kind === 'table' ? [entry.table] : []));

/** Something in every field that a declaration lets hold something. */
const trialRow = (fields: Form['lines'] | Table['fields']): Record<string, unknown> =>
  Object.fromEntries(
    Object.entries(fields).flatMap(([key, { holds }]) => (holds ? [[key, trialOf(holds)]] : [])),
  );

const headTrials = ({ heads = [] }: Table): Record<string, string> =>
  Object.fromEntries(heads.map(({ key, holds }) => [key, String(trialOf(holds))]));

/** The sheets of a set with one row kept in each table and something in each line. */
const keptIn = async (set: SheetSet) => {
  const workbook = memoryWorkbook();
  const { edits, places } = placeSheets(set, await workbook.read([]), {
    measures: 'US',
    forms: Object.fromEntries(formsOf(set).map((form) => [form.key, lineValues(form, trialRow(form.lines))])),
    tables: Object.fromEntries(
      tablesOf(set).map((table) => [
        table.key,
        { add: [rowCells(table, trialRow(table.fields))], heads: headTrials(table) },
      ]),
    ),
  });
  await workbook.apply({ title: 'Keep all', edits });
  const snapshot = await workbook.read(areasOf(set, await workbook.outline()));
  return { workbook, places, snapshot };
};

describe.each(sets.flatMap((set) => formsOf(set).map((form) => ({ set, form, key: form.key }))))(
  'the form $key',
  ({ set, form }) => {
    test('holds what is kept in its lines', async () => {
      const { snapshot } = await keptIn(set);
      const { row, problems } = readForm(form, snapshot, 'US');
      expect(row).toEqual(trialRow(form.lines));
      expect(problems).toEqual([]);
    });

    test('shows each line with its words, and offers what may be chosen', async () => {
      const { workbook, places } = await keptIn(set);
      for (const [, line] of linesOf(form)) {
        const { sheet, row, column } = places.cells[line.name]!;
        expect(workbook.cell(sheet, row, column - 1).value).toBe(line.label);
        expect(workbook.cell(sheet, row, column + 2).value).toBe(line.what);
        expect(workbook.look(sheet, row, column).list?.source).toEqual(offered(line.holds)?.source);
        if (!line.holds) expect(workbook.cell(sheet, row, column).formula).toMatch(/^=/);
        else if (line.holds.kind === 'measure')
          expect(workbook.look(sheet, row, column + 1).list?.source).toContain(
            workbook.cell(sheet, row, column + 1).value,
          );
        else if (line.unit) expect(workbook.cell(sheet, row, column + 1).value).toBe(line.unit);
      }
    });
  },
);

describe.each(sets.flatMap((set) => tablesOf(set).map((table) => ({ set, table, key: table.key }))))(
  'the table $key',
  ({ set, table }) => {
    test('holds what is kept in a row, and above it', async () => {
      const { snapshot } = await keptIn(set);
      const { rows, heads, problems } = readTable(table, snapshot);
      expect(rows).toEqual([{ ...trialRow(table.fields), row: expect.any(Number) as number }]);
      expect(heads).toEqual(headTrials(table));
      expect(problems).toEqual([]);
    });

    test('shows each column under its header, with its note, and works out the others', async () => {
      const { workbook, places } = await keptIn(set);
      const { sheet, header, columns } = places.sites[table.key]!;
      for (const [key, column] of Object.entries(table.fields)) {
        const at = columns[key]!;
        expect(workbook.cell(sheet, header, at).value).toBe(column.header);
        expect(workbook.look(sheet, header, at).note).toBe(column.note);
        if (!column.holds) expect(workbook.cell(sheet, header + 1, at).formula).toMatch(/^=/);
        else if (column.holds.kind === 'measure')
          expect(workbook.cell(sheet, header, columns[unitKey(key)]!).value).toBe(`${column.header}, unit`);
        else if (column.list || offered(column.holds))
          expect(workbook.look(sheet, header + 1, at).list).toBeDefined();
      }
    });
  },
);
