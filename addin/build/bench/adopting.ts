import { proposeAdoption, readList } from '../../core';
import type { ListCell, ListSheet } from '../../core';

const CLASSES = ['HT', 'h.t.', 'Floribunda', 'Mini', 'MinFl', 'Cl'];
const SIZES = ['L', 'M', 'S'];
const HEADINGS = ['Variety', 'Bed', 'Class', 'Size', 'Pot', 'How many', 'Year', 'Source'];

/** A grower's list of eight columns under a title, with repeated names and spellings. */
const list = (rows: number): ListSheet => ({
  cells: [
    ['Our roses'],
    [],
    HEADINGS,
    ...Array.from({ length: rows }, (_, i): ListCell[] => [
      `Rose ${i % 9000}`,
      `Bed ${i % 140}`,
      CLASSES[i % 6]!,
      SIZES[i % 3]!,
      i % 4 ? '' : 'pot',
      1 + (i % 3),
      2000 + (i % 24),
      `swap ${i % 7}`,
    ]),
  ],
  merges: [],
});

const RUNS = 7;

export const run = (print: (line: string) => void): void => {
  for (const rows of [350, 5000, 50_000, 100_000]) {
    const sheet = list(rows);
    const times = Array.from({ length: RUNS }, () => {
      const from = performance.now();
      const { tally } = readList(sheet, proposeAdoption(sheet));
      if (tally.plants !== rows) throw new Error(`${tally.plants} of ${rows} rows were read.`);
      return performance.now() - from;
    }).sort((a, b) => a - b);
    print(
      `${rows.toLocaleString('en').padStart(7)} rows: median ${times[RUNS >> 1]!.toFixed(0)} ms, worst ${times.at(-1)!.toFixed(0)} ms`,
    );
  }
};
