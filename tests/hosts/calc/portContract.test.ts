import { afterAll, beforeAll } from 'vitest';

import { pressesReadFirst } from '../../taskpane/pressesReadFirst';
import type { HostInspection, HostUnderTest } from '../../workbook/portContract/hostUnderTest';
import { portContract } from '../../workbook/portContract/portContract';
import { workbookOf } from './books';
import { sharedOffice, type Office } from './office';

let office: Office;
beforeAll(async () => {
  office = await sharedOffice();
});
afterAll(async () => office.end());

/** A rule's own entries, or the cells it takes them from. */
const sourceOf = async (
  doc: string,
  formula: string,
): Promise<Awaited<ReturnType<NonNullable<HostInspection['list']>>>> => {
  if (formula.startsWith('"')) return { source: formula.slice(1, -1).split('";"'), message: '' };
  const [sheet = '', cells = ''] = formula.replace('$', '').split('.');
  const area = await office.ask<{ row: number; column: number; rows: number; columns: number }>({
    do: 'area_told',
    doc,
    sheet,
    cells,
  });
  return { source: { sheet, ...area }, message: '' };
};

const inspection = (doc: string): HostInspection => {
  const at =
    <Answer>(what: string) =>
    (sheet: string, row: number, column: number) =>
      office.ask<Answer>({ do: what, doc, sheet, row, column });
  return {
    format: at<string>('number_format'),
    width: (sheet, column) => office.ask({ do: 'width', doc, sheet, column }),
    look: async (...cell) => JSON.stringify(await at('look')(...cell)),
    wrapped: at<boolean>('wrapped'),
    frozen: (sheet) => office.ask({ do: 'frozen', doc, sheet }),
    list: async (...cell) => {
      const rule = await at<{ formula: string; message: string } | null>('list_rule')(...cell);
      if (rule === null) return undefined;
      return { ...(await sourceOf(doc, rule.formula))!, message: rule.message };
    },
    note: async (...cell) => (await at<string | null>('note')(...cell)) ?? undefined,
    charts: (sheet) => office.ask({ do: 'charts', doc, sheet }),
    page: (sheet) => office.ask({ do: 'page', doc, sheet }),
  };
};

/** A fresh document; its one sheet has a name that the contract does not use. */
const open = async (): Promise<HostUnderTest> => {
  const doc = await office.ask<string>({ do: 'open_document' });
  return {
    workbook: workbookOf(office, doc),
    undo: () => office.ask({ do: 'undo', doc }),
    notUndone: ['freeze', 'page', 'activate'],
    inspect: inspection(doc),
    user: {
      renameSheet: (sheet, to) => office.ask({ do: 'rename_sheet', doc, sheet, to }),
      insertRows: (sheet, at, count) => office.ask({ do: 'insert_rows', doc, sheet, at, count }),
      insertColumns: (sheet, at, count) => office.ask({ do: 'insert_columns', doc, sheet, at, count }),
    },
    close: () => office.ask({ do: 'close', doc }),
  };
};

portContract('Calc', open);
pressesReadFirst('Calc', open);
