import type * as z from 'zod';
import type { CellInput } from '../change';
import type { Refusal } from '../../core';

/** Allowed entries of a column: given ones, or those of a column of another table. */
export interface ListRule {
  readonly source: readonly string[] | { readonly table: string; readonly column: string };
  readonly message: string;
}

interface ColumnLook {
  readonly header: string;
  /** Characters. */
  readonly width: number;
  readonly format?: string;
  /** Shown as a note on the header cell. */
  readonly note?: string;
}

/** A column that the user fills in. */
export interface InputColumn<Value> extends ColumnLook {
  readonly schema: z.ZodType<Value>;
  readonly list?: ListRule;
}

/** A column that the sheet works out; the template is filled in by `fillTemplate`. */
export interface ComputedColumn extends ColumnLook {
  readonly formula: string;
}

// eslint-disable-next-line @typescript-eslint/no-explicit-any -- inferred per column below
export type Columns = Readonly<Record<string, InputColumn<any> | ComputedColumn>>;

/** What one row of the table holds, by column. */
export type RowOf<C extends Columns> = {
  readonly [Key in keyof C as C[Key] extends ComputedColumn ? never : Key]: C[Key] extends InputColumn<
    infer V
  >
    ? V
    : never;
};

/** A single cell above the table that belongs to it, found by a workbook name. */
export interface HeadLine {
  readonly key: string;
  readonly label: string;
  readonly name: string;
  readonly schema: z.ZodType<string>;
  readonly list?: readonly string[];
  readonly message?: string;
}

/**
 * A table that the program keeps on a sheet. It is found by its workbook name, which points at the header row, and
 * its columns by their headers, so that the user may rename and move the sheet, put rows and columns in, add columns,
 * and change their order.
 */
export interface Table<C extends Columns = Columns> {
  readonly key: string;
  /** Workbook name of the header row. */
  readonly name: string;
  /** Title of the sheet when it is made. */
  readonly title: string;
  /** One line under the title that says what the sheet is for. */
  readonly purpose: string;
  readonly place: Refusal['place'];
  readonly heads?: readonly HeadLine[];
  readonly columns: C;
  /** Columns that tell one row from another: a row with the same entries there is the same row. */
  readonly identity: readonly string[];
  /** Key of the form to the right of which the table stands, instead of on a sheet of its own. */
  readonly beside?: string;
  /** Rows that formulas look at, the rows in use and at least some more. */
  readonly reach: number;
}

/** Keeps a table's column types. */
export const defineTable = <const C extends Columns>(
  table: Table<C> & { readonly identity: readonly (keyof C & string)[] },
): Table<C> => table;

export const input = <Value>(column: InputColumn<Value>): InputColumn<Value> => column;
export const computed = (column: ComputedColumn): ComputedColumn => column;

export const isComputed = (column: InputColumn<unknown> | ComputedColumn): column is ComputedColumn =>
  'formula' in column;

/** True for a column of numbers, days or times, which stand to the right. */
export const isOfNumbers = ({ format = '@' }: ColumnLook): boolean => format !== '@';

/** What is written for a value of a row. */
export const inputOf = (value: unknown): CellInput => {
  if (value === undefined || value === null || value === '') return null;
  return typeof value === 'boolean' ? (value ? 'yes' : 'no') : (value as string | number);
};
