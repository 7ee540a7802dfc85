import { detectDelimiter, parseCsv, stripBom } from '@cj-tech-master/excelts/csv';
import type { ICellData } from '@univerjs/core';

import { bookOf, FRESH_SHEET, freshSheet } from '../grid/bookData';
import { gridCell } from '../grid/cells';
import { FileRefused } from './fileRefused';
import type { OpenedFile } from './readXlsx';

const MOST_CELLS = 2_000_000;
const PLAIN_NUMBER = /^-?(?:0|[1-9]\d*)(?:\.\d+)?$/;

/** Lists are mostly written in UTF-8; those that are not are taken for the older Western kind. */
const decoded = (bytes: Uint8Array): string => {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
};

/** Plain numbers become numbers; anything else stays the text it is, whatever it begins with. */
const cellOf = (text: string): ICellData | undefined => {
  if (text === '') return undefined;
  const { v, t } = gridCell(PLAIN_NUMBER.test(text) && text.length <= 15 ? Number(text) : text);
  return { v, t };
};

/** Reads a list of values between commas, semicolons or tabs as a workbook of one sheet. */
export const readCsv = (name: string, bytes: Uint8Array): OpenedFile => {
  if (bytes.length === 0) throw new FileRefused(`“${name}” is empty; there is nothing in it to open.`);
  if (bytes.includes(0)) throw new FileRefused(`“${name}” is not a list of values, whatever its name says.`);
  const text = stripBom(decoded(bytes));
  const rows = parseCsv(text, { delimiter: detectDelimiter(text) });
  const columns = rows.reduce((most, row) => Math.max(most, row.length), 0);
  if (rows.length * columns > MOST_CELLS)
    throw new FileRefused(
      `“${name}” has more than ${MOST_CELLS.toLocaleString('en')} cells, which is more than this page holds.`,
    );
  const cellData = Object.fromEntries(
    rows.map((row, line) => [
      line,
      Object.fromEntries(row.flatMap((value, column) => (cellOf(value) ? [[column, cellOf(value)]] : []))),
    ]),
  ) as Record<number, Record<number, ICellData>>;
  const sheet = {
    ...freshSheet('List'),
    cellData,
    rowCount: rows.length + FRESH_SHEET.rowCount,
    columnCount: Math.max(columns + 6, FRESH_SHEET.columnCount),
  };
  return { book: bookOf([sheet]), active: sheet.name, left: [] };
};
