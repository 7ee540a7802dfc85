import { join, relative } from 'node:path';

import { parseCLI, startVitest } from 'vitest/node';

import { root } from './paths.mjs';

const MANY = 10;

/** How a file's tests ended. What failed outside of a test, as in loading the file, counts as one failure. */
const countsOf = (file) => {
  const tests = [...file.children.allTests()];
  const ended = (...states) => tests.filter((test) => states.includes(test.result().state)).length;
  const todo = tests.filter(({ options }) => options.mode === 'todo').length;
  const failed = ended('failed', 'pending') + todo;
  return {
    passed: ended('passed'),
    failed: failed === 0 && !file.ok() ? 1 : failed,
    // A host skips by name what it cannot do, such as computing formulas in memory; the count says so.
    skipped: ended('skipped') - todo,
  };
};

const tellSlowest = (files) => {
  console.log('\nThe slowest:');
  for (const [seconds, path] of files
    .map((file) => [file.diagnostic().duration / 1_000, relative(root, file.moduleId)])
    .sort(([a], [b]) => b - a)
    .slice(0, MANY))
    console.log(`${seconds.toFixed(1).padStart(7)} s  ${path}`);
};

/**
 * Runs the tests and tells how many passed, failed and were skipped.
 *
 * @param words as Vitest's own command line takes them: paths, `-t` and a name
 */
export const runTests = async (words) => {
  const { filter, options } = parseCLI(['vitest', 'run', ...words]);
  const config = join(root, 'addin', 'build', 'vitest.config.mjs');
  const vitest = await startVitest('test', filter, { ...options, config });
  const files = vitest.state.getTestModules();
  const unhandled = vitest.state.getUnhandledErrors().length;
  await vitest.close();
  if (files.length > MANY) tellSlowest(files);
  const all = files.map(countsOf);
  const sum = (key) => all.reduce((total, counts) => total + counts[key], 0);
  return { passed: sum('passed'), failed: sum('failed') + unhandled, skipped: sum('skipped') };
};
