import { pathToFileURL } from 'node:url';

import { importTypeScript } from '../typescript.mjs';

const CLASSES = ['HT', 'h.t.', 'Floribunda', 'Mini', 'MinFl', 'Cl'];
const SIZES = ['L', 'M', 'S'];
const HEADINGS = ['Variety', 'Bed', 'Class', 'Size', 'Pot', 'How many', 'Year', 'Source'];

/** A grower's list of eight columns under a title, with repeated names and spellings. */
const list = (rows) => [
  ['Our roses'],
  [],
  HEADINGS,
  ...Array.from({ length: rows }, (_, i) => [
    `Rose ${i % 9000}`,
    `Bed ${i % 140}`,
    CLASSES[i % 6],
    SIZES[i % 3],
    i % 4 ? '' : 'pot',
    1 + (i % 3),
    2000 + (i % 24),
    `swap ${i % 7}`,
  ]),
];

/** Adopts lists of the given lengths five times each; milliseconds of the fastest. */
export const benchAdopting = async (lengths = [350, 5_000, 50_000, 100_000]) => {
  const { proposeAdoption, readList } = await importTypeScript('addin/core/index.ts');
  return lengths.map((rows) => {
    const sheet = { cells: list(rows), merges: [] };
    const times = Array.from({ length: 5 }, () => {
      const start = performance.now();
      const { tally } = readList(sheet, proposeAdoption(sheet));
      if (tally.plants !== rows) throw new Error(`${tally.plants} of ${rows} rows were read`);
      return performance.now() - start;
    });
    return { rows, milliseconds: Math.min(...times) };
  });
};

if (import.meta.url === pathToFileURL(process.argv[1]).href)
  for (const { rows, milliseconds } of await benchAdopting())
    console.log(`adopting ${rows.toLocaleString('en-US')} rows: ${milliseconds.toFixed(0)} ms`);
