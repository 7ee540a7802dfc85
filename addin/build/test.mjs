import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';

import { ensurePackages } from './dependencies.mjs';
import { root } from './paths.mjs';
import { ensurePrograms } from './programs.mjs';
import { CHECKS, VITEST, failures } from './steps.mjs';

/** `npm test`: installs what is missing, then checks, builds and tests everything. Extra words narrow the tests. */

const output = join(root, 'tests', 'output');
const report = join(output, 'report.json');

/** Counts of single tests; a file that could not even be loaded counts as one failure. */
const counted = () => {
  const { numPassedTests, numFailedTests, numPendingTests, numTodoTests, testResults } = JSON.parse(
    readFileSync(report, 'utf8'),
  );
  const unloaded = testResults.filter(
    ({ status, assertionResults }) => status === 'failed' && assertionResults.length === 0,
  );
  return {
    passed: numPassedTests,
    failed: numFailedTests + unloaded.length + numTodoTests,
    // A host skips by name what it cannot do, such as computing formulas in memory; the count says so.
    skipped: numPendingTests,
  };
};

const main = async () => {
  ensurePackages();
  ensurePrograms(['chromium', 'pdftoppm', 'soffice', 'uno', 'gtk3', 'Xvfb', 'openbox', 'xdotool', 'import']);
  mkdirSync(output, { recursive: true });
  rmSync(report, { force: true });

  const narrowed = process.argv.slice(2);
  const failedChecks = narrowed.length > 0 ? [] : failures(CHECKS);
  const { buildFunctions, buildWorkbench } = await import('./targets.mjs');
  await buildFunctions();
  await buildWorkbench();
  const [failedRun] = failures({
    tests: [...VITEST, '--reporter=default', '--reporter=json', `--outputFile.json=${report}`, ...narrowed],
  });

  const { passed, failed, skipped } = counted();
  const checks = narrowed.length > 0 ? 0 : Object.keys(CHECKS).length;
  const allFailed = Math.max(failed, failedRun ? 1 : 0) + failedChecks.length;
  if (failedChecks.length > 0) console.log(`\nNot in order: ${failedChecks.join(', ')}.`);
  console.log(`\n${passed + checks - failedChecks.length} passed, ${allFailed} failed, ${skipped} skipped`);
  return allFailed === 0 && passed > 0 ? 0 : 1;
};

try {
  process.exitCode = await main();
} catch (error) {
  console.error(`\n${error.message}\n\n0 passed, 1 failed`);
  process.exitCode = 1;
}
