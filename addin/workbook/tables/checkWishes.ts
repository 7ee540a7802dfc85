import type * as z from 'zod';
import { cellSentence } from '../fields/cellSentence';
import { unitCell } from '../fields/cellValue';
import { number, rangeBeside } from '../fields/holds';
import { unitKind } from '../fields/usualUnits';
import type { CellValue } from '../change';
import { WorkbookError } from '../port';
import { type SheetSet, type SheetWishes } from './layOut';
import { linesOf, type Form } from './form';
import { inputOf, isComputed, type Table } from './table';
import type { FormWish } from './writeForm';
import type { TableWish } from './writeTable';

const check = (where: string, schema: z.ZodType<unknown>, value: unknown): void => {
  const parsed = schema.safeParse(value === undefined ? null : value);
  if (parsed.success) return;
  const cell = { value: (inputOf(value) ?? null) as CellValue };
  throw new WorkbookError(cellSentence(where, cell, parsed.error.issues[0]!.message));
};

const checkRow = (table: Table, row: Readonly<Record<string, unknown>>): void => {
  for (const [key, value] of Object.entries(row)) {
    const column = table.columns[key];
    if (column && !isComputed(column)) check(`${table.title}, ${column.header}`, column.holds.schema, value);
  }
};

const checkTable = (table: Table, wish: TableWish): void => {
  [...(wish.add ?? []), ...(wish.set ?? [])].forEach((row) => checkRow(table, row));
  wish.cells?.forEach(({ key, value }) => checkRow(table, { [key]: value }));
  table.heads?.forEach((head) => {
    const value = wish.heads?.[head.key];
    if (value !== undefined) check(`${table.title}, ${head.label}`, head.holds.schema, value);
  });
};

const checkForm = (form: Form, wish: FormWish): void => {
  for (const [key, { holds, label }] of linesOf(form)) {
    const asked = wish[key];
    if (!asked || !holds) continue;
    const where = `${form.title}, ${label}`;
    if (holds.kind !== 'measure') check(where, holds.schema, asked.value);
    else {
      check(where, number(rangeBeside(holds, asked.unit)).schema, asked.value);
      if (asked.unit !== undefined) check(`${where}, unit`, unitCell(unitKind(holds.of)), asked.unit);
    }
  }
};

/**
 * Refuses what the sheets may not hold before anything is written.
 *
 * @throws WorkbookError that names sheet and column, what was given and what is allowed
 */
export const checkWishes = (set: SheetSet, wishes: SheetWishes): void => {
  for (const entry of set.sheets)
    if (entry.kind === 'table') checkTable(entry.table, wishes.tables?.[entry.table.key] ?? {});
    else checkForm(entry.form, wishes.forms?.[entry.form.key] ?? {});
};
