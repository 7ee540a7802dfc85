import type { Area } from '../../../workbook/change';
import type { Outline, SheetOutline } from '../../../workbook/port';
import { areaOfReference } from '../../../workbook/references';
import type { BookAt } from '../bookAt';

import { readMerges, type Piece } from './readMerges';

/** The workbook as it was when it was read, with what finds its parts again. */
export interface KnownBook extends Outline {
  /** The program's ids of the sheets, by name. */
  readonly ids: ReadonlyMap<string, string>;
  /** Every workbook name in small letters, with what it stands for as the program spells it. */
  readonly nameFormulas: ReadonlyMap<string, string>;
}

const namesIn = (names: Excel.NamedItemCollection): Map<string, string> =>
  new Map(names.items.map(({ name, formula }) => [name.toLowerCase(), String(formula)]));

const usedOf = (filled: Excel.Range): Pick<SheetOutline, 'rows' | 'columns'> => ({
  rows: filled.isNullObject ? 0 : filled.rowIndex + filled.rowCount,
  columns: filled.isNullObject ? 0 : filled.columnIndex + filled.columnCount,
});

const loadUsed = (sheet: Excel.Worksheet, valuesOnly: boolean): Excel.Range => {
  const used = sheet.getUsedRangeOrNullObject(valuesOnly);
  used.load('rowIndex,columnIndex,rowCount,columnCount');
  return used;
};

/**
 * Asks with the next answer of the program where everything stands; what is given back tells then whether sheets, names
 * and the cells in use are those of the book.
 */
export const askAgain = ({ context, sheet }: BookAt, book: KnownBook): (() => boolean) => {
  const { worksheets, names } = context.workbook;
  worksheets.load('items/id,items/name');
  names.load('items/name,items/formula');
  const used = book.sheets.map(({ name }) => loadUsed(sheet(name), true));
  return () => {
    const now = {
      ids: worksheets.items.map(({ name, id }) => [name, id]),
      names: [...namesIn(names)],
      used: used.map(usedOf),
    };
    const known = {
      ids: [...book.ids],
      names: [...book.nameFormulas],
      used: book.sheets.map(({ rows, columns }) => ({ rows, columns })),
    };
    return JSON.stringify(now) === JSON.stringify(known);
  };
};

/** Reads sheets, cells in use, merged cells and names: two or three answers of the program. */
export const readOutline = async (context: Excel.RequestContext): Promise<KnownBook> => {
  const { worksheets, names } = context.workbook;
  worksheets.load('items/id,items/name');
  names.load('items/name,items/formula');
  const active = worksheets.getActiveWorksheet();
  active.load('name');
  await context.sync();

  const sheets = worksheets.items.map((sheet) => {
    const [filled, drawn] = [loadUsed(sheet, true), loadUsed(sheet, false)];
    return { sheet, name: sheet.name, filled, drawn };
  });
  await context.sync();

  const pieces = sheets.flatMap(({ sheet, name, drawn }): Piece[] =>
    drawn.isNullObject
      ? []
      : [
          {
            name,
            sheet,
            row: drawn.rowIndex,
            column: drawn.columnIndex,
            rows: drawn.rowCount,
            columns: drawn.columnCount,
          },
        ],
  );
  const merges = await readMerges(context, pieces);

  const outlines = sheets.map(({ name, filled }): SheetOutline => ({
    name,
    ...usedOf(filled),
    merges: merges.filter(({ sheet }) => sheet === name),
  }));
  const known = new Set(outlines.map(({ name }) => name));
  const named = names.items.flatMap(({ name, formula }): [string, Area][] => {
    const area = areaOfReference(String(formula));
    return area && known.has(area.sheet) ? [[name, area]] : [];
  });
  return {
    sheets: outlines,
    names: Object.fromEntries(named),
    active: active.name,
    ids: new Map(sheets.map(({ sheet, name }) => [name, sheet.id])),
    nameFormulas: namesIn(names),
  };
};
