import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { bundle } from '../../addin/build/bundle.mjs';
import configuration from '../../addin/build/webpack.functions.mjs';
import names from '../../functions/names.json';

// Away from the project, so that nothing but the file itself can be found.
const folder = mkdtempSync(join(tmpdir(), 'functions-'));

const run = (script: string): unknown =>
  JSON.parse(
    execFileSync(process.execPath, ['-e', `const f = require('./functions.cjs'); ${script}`], {
      cwd: folder,
      encoding: 'utf8',
    }),
  );

beforeAll(() => bundle(configuration({ mode: 'production', folder })), 120_000);
afterAll(() => rmSync(folder, { recursive: true }));

test('the built functions are one file, with the licences of others beside it', () => {
  expect(readdirSync(folder)).toEqual(['functions.LICENSES.txt', 'functions.cjs']);
});

test('any Node script calls a function by name', () => {
  const calls = [
    ['DILUTE', [1, 'tbsp/gal', 60, 'gal', 'cup']],
    ['FILLPLAN', [500, 200, 'L', 10, null, '']],
    ['DILUTE', [1, 'tbsp/gal', { error: '#DIV/0!' }, 'gal', 'cup']],
    ['SECONDS', [-1, 'gal', 2.6, 'gal/min']],
    ['SUM', [1, 2]],
  ];
  expect(run(`console.log(JSON.stringify(${JSON.stringify(calls)}.map((made) => f.call(...made))))`)).toEqual(
    [
      { value: 3.75 },
      {
        value: [
          [1, 200, 190],
          [2, 190, 190],
          [3, 120, 120],
        ],
      },
      { error: '#DIV/0!' },
      { error: '#VALUE!', sentence: 'dose: -1 was given; use more than 0.' },
      { error: '#NAME?', sentence: expect.stringContaining('"SUM" is not a function of this program') },
    ],
  );
});

test('and reads the catalogue and a working', () => {
  expect(run('console.log(JSON.stringify(f.catalogue.map(({ name }) => name).sort()))')).toEqual(names);
  expect(
    run(`console.log(JSON.stringify(f.explain('FEED.DOSE', [15, 2.8, 'gal/min', 'gal']).steps))`),
  ).toEqual([{ text: '15 s × 2.8 gal/min ÷ 60 s/min = 0.7 gal' }]);
});
