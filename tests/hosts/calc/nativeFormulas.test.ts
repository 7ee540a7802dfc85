import { afterAll, beforeAll, expect, test } from 'vitest';

import { inputsFor, REFERENCES } from '../nativeReferences';
import { sharedOffice, type Office } from './office';

const ROWS = 1_000;

let office: Office;
let doc: string;
const sheet = 'Sheet1';
beforeAll(async () => {
  office = await sharedOffice();
  doc = await office.ask<string>({ do: 'open_document' });
});
afterAll(async () => office.end());

const column = (index: number): string => String.fromCharCode(65 + index);

test.each(REFERENCES)(
  '$name is what Calc computes by itself, on a thousand random inputs',
  async (reference) => {
    const values = inputsFor(reference, ROWS);
    await office.ask({
      do: 'put_values',
      doc,
      sheet,
      cells: `A1:${column(reference.inputs.length - 1)}${ROWS}`,
      values,
    });
    await office.ask({ do: 'fill_down', doc, sheet, cells: `M1:M${ROWS}`, formula: `=${reference.ours}` });
    await office.ask({ do: 'fill_down', doc, sheet, cells: `N1:N${ROWS}`, formula: `=${reference.native}` });
    const answers = await office.ask<[number, number][]>({ do: 'values', doc, sheet, cells: `M1:N${ROWS}` });
    expect(answers).toHaveLength(ROWS);
    const distinct = new Set(answers.map(([ours]) => ours)).size;
    expect(distinct).toBeGreaterThan(9);
    answers.forEach(([ours, native], row) => {
      const said = `row ${row + 1}: ${values[row]!.join(', ')}`;
      expect(Math.abs(ours - native), said).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(native)));
    });
  },
);
