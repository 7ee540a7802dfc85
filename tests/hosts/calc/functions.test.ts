import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import { catalogue, formulaOf } from '../../../functions';
import { startOffice, type Office } from './office';

let office: Office;
let doc: string;

interface Cell {
  readonly value: number | string | null;
  readonly error: number;
  readonly shows: string;
  readonly formula: string | null;
}

const SHEET = 'Sheet1';
const cells = (area: string) => office.ask<Cell[][]>({ do: 'cells', doc, sheet: SHEET, cells: area });

/** Calc's own English: semicolons between arguments and columns, bars between the rows of an array. */
const inCalc = (formula: string): string =>
  formula
    .split(/("(?:[^"]|"")*")/)
    .map((part, index) => (index % 2 ? part : part.replaceAll(';', '|').replaceAll(',', ';')))
    .join('');

beforeAll(async () => {
  office = await startOffice();
  doc = await office.ask<string>({ do: 'open_document' });
});
afterAll(async () => office.end());

const examples = catalogue.flatMap((entry) =>
  entry.examples.map((example, index) => ({ entry, example, index })),
);

describe('every example of the catalogue, computed by Calc', () => {
  test.each(examples)('$entry.name, example $index', async ({ entry, example }) => {
    const formula = inCalc(formulaOf(entry.name, example.args));
    const rows = typeof example.answer === 'object' ? example.answer : [[example.answer]];
    const area = `A1:${String.fromCharCode(64 + rows[0]!.length)}${rows.length}`;
    if (entry.result.kind === 'rows')
      await office.ask({ do: 'put_array', doc, sheet: SHEET, cells: area, formula });
    else await office.ask({ do: 'put', doc, sheet: SHEET, cells: 'A1', formulas: [[formula]] });
    const shown = await cells(area);
    for (const [r, row] of rows.entries())
      for (const [c, wanted] of row.entries()) {
        const { value, error } = shown[r]![c]!;
        expect(error, formula).toBe(0);
        if (typeof wanted === 'number') expect(value).toBeCloseTo(wanted, 9);
        else expect(value).toBe(wanted);
      }
    await office.ask({ do: 'put_array', doc, sheet: SHEET, cells: area, formula: '' });
  });
});
