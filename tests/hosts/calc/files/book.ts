import type { Edit } from '../../../../addin/workbook/change';
import { workbookOf } from '../books';
import type { Cell } from '../cells';
import type { Office } from '../office';

/** A kind of file, and Calc's name for it. */
export interface Kind {
  readonly ending: string;
  readonly filter: string;
}

export const XLSX: Kind = { ending: 'xlsx', filter: 'Calc MS Excel 2007 XML' };
export const ODS: Kind = { ending: 'ods', filter: 'calc8' };
export const SHEET = 'Round';

/**
 * A number, a text, one value of an array function, an error, our function in an expression, a native formula; then
 * native formulas over ours: two that pass an error on, and one that makes something of it.
 */
export const BOOK: readonly Edit[] = [
  { kind: 'addSheet', sheet: SHEET },
  {
    kind: 'write',
    sheet: SHEET,
    row: 0,
    column: 0,
    cells: [
      [0.7, { formula: '=FEED.SECONDS(A1,"gal",Wand_flow,"gal/min")' }],
      [2.8, { formula: '=FEED.MEASURE(60,"tbsp")' }],
      ['=1+1', { formula: '=INDEX(FEED.FILLPLAN(200,60,"gal"),4,2)' }],
      ['says FEED.SECONDS(1,4)', { formula: '=FEED.SECONDS("much","gal",2,"gal/min")' }],
      [true, { formula: '=IF(A1>0,FEED.DOSE(B1,2.8,"gal/min","gal")*2,"FEED.DOSE(")' }],
      [45_000, { formula: '=SUM(A1:A2)' }],
      [1, { formula: '=B1*2' }],
      [1, { formula: '=B2&"!"' }],
      [1, { formula: '=IF(COUNT(B1)=1,"known","not known")' }],
    ],
  },
  { kind: 'name', name: 'Wand_flow', area: { sheet: SHEET, row: 1, column: 0, rows: 1, columns: 1 } },
];

/** Opens a file in an office. */
export const openIn = (program: Office, path: string) => program.ask<string>({ do: 'open_document', path });
/** The formulas of `BOOK`, one below the other. */
export const column = (program: Office, doc: string): Promise<Cell[]> =>
  program
    .ask<Cell[][]>({ do: 'cells', doc, sheet: SHEET, cells: 'B1:B9' })
    .then((rows) => rows.map(([cell]) => cell!));
export const shown = async (program: Office, doc: string): Promise<string[]> =>
  (await column(program, doc)).map(({ shows }) => shows);

/** `BOOK` in a document of Calc. */
export const built = async (office: Office): Promise<string> => {
  const doc = await office.ask<string>({ do: 'open_document' });
  await workbookOf(office, doc).apply({ title: 'Build', edits: BOOK });
  return doc;
};
