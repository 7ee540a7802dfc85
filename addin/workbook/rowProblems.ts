import type { Problem } from './garden';
import type { TableRead } from './tables/readTable';
import type { Columns, Table } from './tables/table';
import { whereWords } from './tables/template';

interface Read<C extends Columns, Row = unknown> extends Pick<TableRead<C>, 'site'> {
  readonly rows: readonly (Row & { readonly row: number })[];
}

const problemAt = <C extends Columns>(
  read: Read<C>,
  table: Table<C>,
  key: keyof C & string,
  row: number,
  words: string,
): Problem => {
  const sheet = read.site?.sheet ?? table.title;
  const sentence = `${whereWords(sheet, row, table.columns[key]!.header)}: ${words}.`;
  return { place: table.place, sheet, row, column: read.site?.columns[key], sentence };
};

/** A name that stands in two rows of a table: the second one is told, since only one can count. */
export const doubledRows = <C extends Columns, Key extends keyof C & string>(
  read: Read<C, Readonly<Record<Key, string>>>,
  table: Table<C>,
  key: Key,
): Problem[] => {
  const first = new Map<string, number>();
  return read.rows.flatMap((entry) => {
    const name = entry[key];
    const before = first.get(name.toLowerCase());
    first.set(name.toLowerCase(), before ?? entry.row);
    return before === undefined
      ? []
      : [
          problemAt(
            read,
            table,
            key,
            entry.row,
            `“${name}” stands in row ${before + 1} already; keep one of the two`,
          ),
        ];
  });
};
