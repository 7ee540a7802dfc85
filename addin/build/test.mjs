import { ensurePackages } from './dependencies.mjs';
import { ensurePrograms } from './programs.mjs';
import { CHECKS, failures } from './steps.mjs';

/**
 * `npm test`: installs what is missing, then checks, builds and tests everything. With `--changed`, and a commit where
 * it is not the last one, the tests that a change since then can reach; other words narrow the tests alone.
 */

/** Paths of the tests to run, as Vitest takes them; all of them where none is named. */
const asked = async (words) => {
  if (words[0] !== '--changed') return words;
  const { changedSince, reachedBy } = await import('./reach.mjs');
  return reachedBy(changedSince(words[1] ?? 'HEAD'));
};

const buildAll = async () => {
  const { buildFunctions, buildWorkbench } = await import('./targets.mjs');
  const { buildExtension } = await import('./calc/makeExtension.mjs');
  const { buildOffice } = await import('./office/buildOffice.mjs');
  for (const build of [buildFunctions, buildWorkbench, buildExtension, buildOffice]) await build();
};

const main = async () => {
  ensurePackages();
  ensurePrograms(['chromium', 'pdftoppm', 'soffice', 'uno', 'gtk3', 'Xvfb', 'openbox', 'xdotool', 'import']);
  const words = process.argv.slice(2);
  const whole = words.length === 0;
  const checked = whole || words[0] === '--changed';
  const tests = await asked(words);

  // Tests build what they need; a whole run does so beforehand, beside the checks.
  const [failedChecks] = await Promise.all([checked ? failures(CHECKS) : [], whole ? buildAll() : undefined]);
  if (failedChecks.length > 0) console.log(`\nNot in order: ${failedChecks.join(', ')}.`);

  const none = !whole && tests.length === 0;
  if (none) console.log('\nNo test is reached by what was changed.');
  const { runTests } = await import('./runTests.mjs');
  const { passed, failed, skipped } = none ? { passed: 0, failed: 0, skipped: 0 } : await runTests(tests);

  const checks = checked ? Object.keys(CHECKS).length : 0;
  const held = passed + checks - failedChecks.length;
  const notHeld = failed + failedChecks.length;
  console.log(`\n${held} passed, ${notHeld} failed, ${skipped} skipped`);
  return notHeld === 0 && held > 0 ? 0 : 1;
};

try {
  process.exitCode = await main();
} catch (error) {
  console.error(`\n${error.message}\n\n0 passed, 1 failed, 0 skipped`);
  process.exitCode = 1;
}
