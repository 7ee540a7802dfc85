import type { ICellData } from '@univerjs/core';

import type { BookData, SheetData } from '../grid/bookData';
import { partsOf, resourcesOf } from '../grid/bookParts';
import { gridNameRefusal } from '../grid/sheetNames';

/** A sheet that got another name when its file was opened. */
export interface Renamed {
  readonly from: string;
  readonly to: string;
}

const LONGEST_NAME = 31;

/** The name without what the grid cannot find, and unlike every other. */
const nameFor = (name: string, taken: ReadonlySet<string>): string => {
  const plain = name.replaceAll('!', '').trim() || 'Sheet';
  for (let number = 1; ; number++) {
    const tail = number === 1 ? '' : ` ${number}`;
    const next = `${plain.slice(0, LONGEST_NAME - tail.length)}${tail}`;
    if (!taken.has(next.toLowerCase())) return next;
  }
};

const quoted = (name: string): string => `'${name.replaceAll("'", "''")}'!`;

/**
 * Renames the sheets whose exclamation mark keeps the grid's formulas from finding them, and lets formulas, names and
 * lists of allowed entries follow.
 */
export const renameSheets = (book: BookData): { book: BookData; renamed: readonly Renamed[] } => {
  const sheets = book.sheetOrder.map((id) => book.sheets[id] as SheetData);
  const taken = new Set(sheets.map(({ name }) => name.toLowerCase()));
  const renamed: Renamed[] = [];
  for (const { name } of sheets.filter(({ name }) => name.includes('!') && gridNameRefusal(name))) {
    const to = nameFor(name, taken);
    taken.add(to.toLowerCase());
    renamed.push({ from: name, to });
  }
  if (renamed.length === 0) return { book, renamed };

  const follow = (formula: string): string =>
    renamed.reduce((text, { from, to }) => text.replaceAll(quoted(from), quoted(to)), formula);
  const cell = (data: ICellData): ICellData => (data.f ? { ...data, f: follow(data.f) } : data);
  const cells = (data: SheetData['cellData']): NonNullable<SheetData['cellData']> =>
    Object.fromEntries(
      Object.entries(data ?? {}).map(([row, line]) => [
        row,
        Object.fromEntries(
          Object.entries((line ?? {}) as Record<string, ICellData>).map(([column, one]) => [
            column,
            cell(one),
          ]),
        ),
      ]),
    );
  const parts = partsOf(book);
  return {
    renamed,
    book: {
      ...book,
      sheets: Object.fromEntries(
        sheets.map((sheet) => [
          sheet.id,
          {
            ...sheet,
            name: renamed.find(({ from }) => from === sheet.name)?.to ?? sheet.name,
            cellData: cells(sheet.cellData),
          },
        ]),
      ),
      resources: resourcesOf({
        ...parts,
        names: parts.names.map((name) => ({ ...name, formulaOrRefString: follow(name.formulaOrRefString) })),
        rules: Object.fromEntries(
          Object.entries(parts.rules).map(([id, list]) => [
            id,
            list.map((rule) => ({
              ...rule,
              ...(rule.formula1 === undefined ? {} : { formula1: follow(rule.formula1) }),
              ...(rule.formula2 === undefined ? {} : { formula2: follow(rule.formula2) }),
            })),
          ]),
        ),
      }),
    },
  };
};
