import { expect, test } from 'vitest';

import { memoryWorkbook } from '../../addin/workbook/memoryWorkbook';
import { inputsFor, REFERENCES } from '../hosts/nativeReferences';
import { openHeadlessGrid } from './headlessGrid';

const ROWS = 50;

/** The formula as the grid spells it, for one row. */
const inRow = (formula: string, row: number): string =>
  `=${formula
    .replaceAll(';', ',')
    .replace('COM.SUN.STAR.SHEET.ADDIN.ANALYSIS.GETCONVERT', 'CONVERT')
    .replace(/\b([A-F])1\b/g, `$1${row + 1}`)}`;

test.each(REFERENCES)("$name is what the grid's own formulas make of the same inputs", async (reference) => {
  const inputs = inputsFor(reference, ROWS);
  const rows = inputs.map((values, row) => [
    ...values,
    { formula: inRow(reference.ours, row) },
    { formula: inRow(reference.inGrid ?? reference.native, row) },
  ]);
  const memory = memoryWorkbook({ sheets: { Sums: rows } });
  const grid = await openHeadlessGrid(memory.inspect());
  const at = reference.inputs.length;
  const answers = inputs.map((_, row) => [at, at + 1].map((column) => grid.value('Sums', row, column)));
  grid.close();
  expect(new Set(answers.map(([ours]) => ours)).size).toBeGreaterThan(5);
  for (const [row, [ours, native]] of answers.entries()) {
    const said = `row ${row + 1}: ${inputs[row]!.join(', ')}: ${String(ours)} and ${String(native)}`;
    expect(Math.abs(Number(ours) - Number(native)), said).toBeLessThanOrEqual(
      1e-9 * Math.max(1, Math.abs(Number(native))),
    );
  }
});
