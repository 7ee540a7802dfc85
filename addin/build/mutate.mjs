import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';

import { ensurePackages } from './dependencies.mjs';

/**
 * `npm run mutate -- <path> … [--sample 300] [--seed 7] [--texts] [--tests <path>]`: breaks the sources in one small
 * place at a time and tells which breaks no test sees. Without a path it takes the core and the functions.
 */
const { values: options, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    sample: { type: 'string' },
    seed: { type: 'string', default: String(Math.floor(Math.random() * 1e6)) },
    texts: { type: 'boolean', default: false },
    tests: { type: 'string', multiple: true },
  },
});

const whole = (name) => {
  if (!/^\d+$/.test(options[name])) throw new Error(`--${name}: use a whole number.`);
  return Number(options[name]);
};

const OF_NUMBERS = ['tests/core/', 'tests/functions/', 'tests/properties/', 'tests/oracles/'];
/** The tests that are about a room; more would only repeat what they say. */
const TESTS = {
  core: OF_NUMBERS,
  functions: OF_NUMBERS,
  workbook: ['tests/workbook/'],
  taskpane: ['tests/taskpane/'],
};
const testsFor = (path) => {
  const tests = TESTS[path.replace(/^addin\//, '').split('/')[0]];
  if (tests === undefined) throw new Error(`${path}: name its tests, such as --tests tests/workbook.`);
  return tests;
};

const LONGEST = 70;
const short = (code) => {
  const line = code.replace(/\s+/g, ' ').trim();
  return line.length > LONGEST ? `${line.slice(0, LONGEST)}…` : line;
};

const killedOf = (mutants) => {
  const killed = mutants.filter(({ fate }) => fate === 'killed' || fate === 'hung').length;
  return `${killed} of ${mutants.length} killed (${((100 * killed) / mutants.length).toFixed(1)} %)`;
};

const NOTES = { survived: '', unreached: ' (no test reaches it)' };

/** Killed and survived of a file, every survivor with its place. */
const told = (file, its) => [
  `${file}: ${killedOf(its)}`,
  ...its
    .filter(({ fate }) => fate in NOTES)
    .map(
      ({ line, column, before, after, fate }) =>
        `  ${file}:${line}:${column} ${short(before)} → ${short(after)}${NOTES[fate]}`,
    ),
];

const main = async (folder) => {
  ensurePackages();
  const seed = whole('seed');
  const { default: fc } = await import('fast-check');
  const { instrument } = await import('./mutate/instrument.mjs');
  const { openTests } = await import('./mutate/tests.mjs');
  const { tryAll } = await import('./mutate/tryAll.mjs');

  const paths = positionals.length > 0 ? positionals : ['addin/core', 'functions'];
  const filters = options.tests ?? paths.flatMap(testsFor);
  const { mutants: all, sources } = await instrument(paths, join(folder, 'sources'), options.texts);
  const many = Math.min(options.sample === undefined ? all.length : whole('sample'), all.length);
  const [mutants] = fc.sample(fc.subarray(all, { minLength: many, maxLength: many }), { seed, numRuns: 1 });
  const tests = await openTests(folder, sources, filters);
  try {
    await tryAll(tests, mutants, (line) => console.log(line));
  } finally {
    await tests.close();
  }
  const files = [...new Set(mutants.map(({ file }) => file))];
  const lines = files.flatMap((name) =>
    told(
      name,
      mutants.filter(({ file }) => file === name),
    ),
  );
  console.log(['', ...lines, ''].join('\n'));
  const of = many === all.length ? '' : ` of ${all.length}, drawn with --seed ${seed}`;
  const count = (wanted) => mutants.filter(({ fate }) => fate === wanted).length;
  console.log(
    `${killedOf(mutants)}${of}; ${count('hung')} of the killed by the time they took, ${count('unreached')} of the others reached by no test`,
  );
};

const folder = mkdtempSync(join(tmpdir(), 'wandcount-mutants-'));
process.on('exit', () => rmSync(folder, { recursive: true, force: true }));
for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => process.exit(1));
try {
  await main(folder);
} catch (error) {
  console.error(error.message);
  process.exitCode = 1;
}
