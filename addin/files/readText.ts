import { detectDelimiter, parseCsv, stripBom } from '@cj-tech-master/excelts/csv';

import type { CellValue } from '../workbook/change';
import { plainSheet, type FileBook, type FileListener } from './fileBook';
import { FileRefused } from './fileRefused';
import { rowPages } from './rowPages';

const PLAIN_NUMBER = /^-?(?:0|[1-9]\d*)(?:\.\d+)?$/;
/** What no text holds. */
const NO_TEXT = /[\0\ufffe\uffff]/;

/** UTF-16 by its mark, or by which half of its pairs of bytes is mostly zero; undefined for any other text. */
const utf16 = (bytes: Uint8Array): 'utf-16le' | 'utf-16be' | undefined => {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return 'utf-16le';
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return 'utf-16be';
  const zeros = [0, 0] as [number, number];
  bytes.forEach((byte, at) => {
    if (byte === 0) zeros[(at % 2) as 0 | 1] += 1;
  });
  if (zeros[0] === zeros[1]) return undefined;
  return zeros[1] > zeros[0] ? 'utf-16le' : 'utf-16be';
};

const inside = (encoding: string, bytes: Uint8Array): string | undefined => {
  try {
    return new TextDecoder(encoding, { fatal: true }).decode(bytes);
  } catch {
    return undefined;
  }
};

/** Lists are mostly written in UTF-8, by some programs in UTF-16; others are taken for the older Western kind. */
const decoded = (name: string, bytes: Uint8Array): string => {
  const wide = utf16(bytes);
  const text =
    wide === undefined ? (inside('utf-8', bytes) ?? inside('windows-1252', bytes)) : inside(wide, bytes);
  if (text === undefined || NO_TEXT.test(text))
    throw new FileRefused(`“${name}” is not a list of values, whatever its name says.`);
  return text;
};

/** Plain numbers become numbers; anything else stays the text it is, whatever it begins with. */
const valueOf = (text: string): CellValue =>
  PLAIN_NUMBER.test(text) && text.length <= 15 ? Number(text) : text;

/** Reads a list of values between commas, semicolons or tabs as a workbook of one sheet. */
export const readText = (name: string, bytes: Uint8Array, listener: FileListener): FileBook => {
  if (bytes.length === 0) throw new FileRefused(`“${name}” is empty; there is nothing in it to open.`);
  const text = stripBom(decoded(name, bytes));
  const lines = parseCsv(text, { delimiter: detectDelimiter(text) });
  const pages = rowPages(name, {
    rows: (rows) => {
      listener.rows(rows);
      listener.progress(rows.row + rows.values.length, lines.length);
    },
  });
  lines.forEach((line, row) => {
    pages.row(0, row);
    line.forEach((value, column) => {
      if (value !== '') pages.cell(column, { value: valueOf(value) }, 0);
    });
  });
  pages.end();
  const sheet = plainSheet('List');
  return { sheets: [sheet], names: [], active: sheet.name, left: [] };
};
