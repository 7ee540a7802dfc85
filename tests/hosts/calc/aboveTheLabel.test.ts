import { execFileSync } from 'node:child_process';
import { copyFileSync, mkdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll } from 'vitest';

import { root } from '../../../addin/build/paths.mjs';
import { findProgram } from '../../../addin/build/programs.mjs';
import { cellAddress } from '../../../addin/workbook/address';
import { CARD } from '../../../addin/workbook/card/cardNames';
import { areaNamed, cellsOf } from '../../../addin/workbook/snapshot';
import type { PaneEvent } from '../../../taskpane/view';
import { tellsTheTruth, type CardHost } from '../aboveTheLabel';
import { savedFile } from '../workbench/savedFile';
import { workbookOf } from './books';
import { sample } from './mainJob';
import { sharedOffice, type Office } from './office';

/* Cells are filled as by hand; the card is read in the sheet, from the PDF that the office prints, from the .xlsx. */

const output = join(root, 'tests', 'output', 'calc');
const PDF_TO = dirname(findProgram('pdftoppm')!);
let office: Office;
let doc: string;

const happens = (event: PaneEvent) => office.ask({ do: 'job', doc, request: { event } });
const named = async (name: string) => areaNamed(await workbookOf(office, doc).outline(), name)!;
const printed = () => join(office.folder, 'card.pdf');

const print = async (): Promise<string> => {
  await office.ask({ do: 'store', doc, path: printed(), filter: 'calc_pdf_Export' });
  const text = execFileSync(join(PDF_TO, 'pdftotext'), [printed(), '-'], { encoding: 'utf8' });
  return text
    .split('\f')
    .filter((words) => words.includes('Hold the wand'))
    .join(' ')
    .replace(/\s+/g, ' ');
};
const file = async (): Promise<string> => {
  const path = join(office.folder, 'card.xlsx');
  await office.ask({ do: 'store', doc, path, filter: 'Calc MS Excel 2007 XML' });
  return (await savedFile(readFileSync(path))).texts(CARD).flat().join(' ');
};

const host: CardHost = {
  printed: async () => {
    const workbook = workbookOf(office, doc);
    const area = await named(CARD);
    return cellsOf(await workbook.read([area]), area).map((line) =>
      line.map(({ value, error }) => error ?? String(value ?? '')),
    );
  },
  copies: async () => ({ print: await print(), file: await file() }),
  type: async (place, text) => {
    const [name = '', cell] = place.split('!');
    const area = cell === undefined ? await named(name) : undefined;
    await office.ask({
      do: 'put_values',
      doc,
      sheet: area?.sheet ?? name,
      cells: cell ?? cellAddress(area!.row, area!.column),
      values: [[/^\d+$/.test(text) ? Number(text) : text]],
    });
  },
  round: async () => {
    const view = JSON.stringify(await happens({ kind: 'open', section: 'round' }));
    return { says: view, prints: view.includes('"Print the card"') };
  },
  makeCard: async (reason) => {
    await happens({ kind: 'open', section: 'round' });
    if (reason !== undefined) await happens({ kind: 'type', field: 'round.reason', value: reason });
    const view = JSON.stringify(await happens({ kind: 'press', action: 'round.card' }));
    if (!view.includes('Made the card')) throw new Error(view);
  },
  picture: async (name) => {
    await print();
    copyFileSync(printed(), join(output, `${name}.pdf`));
  },
};

beforeAll(async () => {
  mkdirSync(output, { recursive: true });
  office = await sharedOffice();
  const path = join(office.folder, 'garden.xlsx');
  copyFileSync(sample('garden.xlsx'), path);
  doc = await office.ask<string>({ do: 'open_document', path });
});
afterAll(() => office?.end());

tellsTheTruth(() => host);
