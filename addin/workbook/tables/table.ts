import type { CellInput } from '../change';
import type { Refusal } from '../../core';
import {
  number,
  unitOf,
  type Ask,
  type HeldBy,
  type Holds,
  type Measure,
  type Measured,
  type Single,
} from '../fields/holds';
import { unitKind } from '../fields/usualUnits';

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
interface InputColumn<H extends Holds = Holds> extends ColumnLook {
  readonly holds: H;
  /** Entries offered, where not the choices that it holds. */
  readonly list?: ListRule;
  readonly ask?: Ask;
  /** Characters of the column of units that stands beside a measure. */
  readonly unitWidth?: number;
}

/** A column that the sheet works out; the template is filled in by `fillTemplate`. Nothing is read of it. */
interface ComputedColumn extends ColumnLook {
  readonly formula: string;
  readonly holds?: never;
  readonly ask?: never;
}

export type Columns = Readonly<Record<string, InputColumn | ComputedColumn>>;

/** A column as it stands on the sheet: a measure takes two. */
export type SheetColumn = InputColumn<Single<unknown>> | ComputedColumn;

/** A single cell above the table that belongs to it, found by a workbook name. */
export interface HeadLine {
  readonly key: string;
  readonly label: string;
  readonly name: string;
  readonly holds: Single<string>;
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
  /** What a row holds: each column declared once, with what people see of it and how the pane asks for it. */
  readonly fields: C;
  /** The same as it stands on the sheet: a measure `rate` has its unit in a column `rateUnit` of its own. */
  readonly columns: Readonly<Record<string, SheetColumn>>;
  /** Columns that tell one row from another: a row with the same entries there is the same row. */
  readonly identity: readonly string[];
  /** Key of the form to the right of which the table stands, instead of on a sheet of its own. */
  readonly beside?: string;
  /** Rows that formulas look at, the rows in use and at least some more. */
  readonly reach: number;
}

/** What one row of a table holds, by column. */
export type RowOf<T extends Table> = HeldBy<T['fields'], Measured | undefined> & { readonly row: number };

export const unitKey = (key: string): string => `${key}Unit`;

const AS_PRINTED = 'As labels print it: tbsp/gal, mL/L, g/L, oz/100 gal.';

const isMeasure = (column: InputColumn | ComputedColumn): column is InputColumn<Measure> =>
  column.holds?.kind === 'measure';

const columnsOf = (key: string, column: InputColumn | ComputedColumn): [string, SheetColumn][] => {
  if (!isMeasure(column)) return [[key, column as SheetColumn]];
  const { holds, header, unitWidth = column.width, ...look } = column;
  const note = unitKind(holds.of) === 'rate' ? { note: AS_PRINTED } : {};
  return [
    [key, { ...look, header, holds: number(holds.range) }],
    [
      unitKey(key),
      { header: `${header}, unit`, width: unitWidth, format: '@', ...note, holds: unitOf(holds.of) },
    ],
  ];
};

/** Keeps the types of a table's columns. */
export const defineTable = <const C extends Columns>({
  columns,
  ...table
}: Omit<Table, 'fields' | 'columns' | 'identity'> & {
  readonly columns: C;
  readonly identity: readonly (keyof C & string)[];
}): Table<C> => ({
  ...table,
  fields: columns,
  columns: Object.fromEntries(Object.entries(columns).flatMap(([key, column]) => columnsOf(key, column))),
});

export const isComputed = (column: SheetColumn): column is ComputedColumn => 'formula' in column;

/** Keys of the measures, each with a column of units beside it. */
export const measuresOf = ({ fields }: Table): string[] =>
  Object.entries(fields).flatMap(([key, column]) => (isMeasure(column) ? [key] : []));

/** A row as the sheet's columns keep it; a column that is not in the row stays as it is. */
export const rowCells = (
  table: Table,
  row: Readonly<Record<string, unknown>>,
): Readonly<Record<string, unknown>> =>
  Object.fromEntries(
    Object.entries(table.fields).flatMap(([key, column]) => {
      if (!(key in row) || !column.holds) return [];
      if (!isMeasure(column)) return [[key, row[key]]];
      const measured = row[key] as Measured | undefined;
      return [
        [key, measured?.value],
        [unitKey(key), measured?.unit],
      ];
    }),
  );

/** The same with what is not in the row emptied. */
export const wholeRow = (
  table: Table,
  row: Readonly<Record<string, unknown>>,
): Readonly<Record<string, unknown>> =>
  rowCells(table, {
    ...Object.fromEntries(Object.keys(table.fields).map((key) => [key, undefined])),
    ...row,
  });

/** True for a column of numbers, days or times, which stand to the right. */
export const isOfNumbers = ({ format = '@' }: ColumnLook): boolean => format !== '@';

/** What is written for a value of a row. */
export const inputOf = (value: unknown): CellInput => {
  if (value === undefined || value === null || value === '') return null;
  return typeof value === 'boolean' ? (value ? 'yes' : 'no') : (value as string | number);
};
