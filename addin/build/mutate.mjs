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
    seed: { type: 'string' },
    texts: { type: 'boolean', default: false },
    tests: { type: 'string', multiple: true },
  },
});

const whole = (name) => {
  const given = options[name];
  if (given !== undefined && !/^\d+$/.test(given)) throw new Error(`--${name}: use a whole number.`);
  return given === undefined ? undefined : Number(given);
};

const main = async (folder) => {
  ensurePackages();
  const sample = whole('sample');
  const seed = whole('seed') ?? Math.floor(Math.random() * 1e6);
  const { instrument } = await import('./mutate/instrument.mjs');
  const { testsFor } = await import('./mutate/testsFor.mjs');
  const { openTests } = await import('./mutate/tests.mjs');
  const { tryAll } = await import('./mutate/tryAll.mjs');
  const { drawn, summary } = await import('./mutate/summary.mjs');

  const paths = positionals.length > 0 ? positionals : ['addin/core', 'functions'];
  const made = await instrument(paths, join(folder, 'sources'), options.texts);
  const mutants = drawn(made.mutants, sample, seed);
  const tests = await openTests(folder, made.sources, options.tests ?? testsFor(paths));
  try {
    await tryAll(tests, mutants, (line) => console.log(line));
  } finally {
    await tests.close();
  }
  const of = sample === undefined ? '' : ` of ${made.mutants.length}, drawn with --seed ${seed}`;
  console.log(summary(mutants, of));
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
