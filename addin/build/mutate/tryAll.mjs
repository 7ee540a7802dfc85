import { relative } from 'node:path';

import { root } from '../paths.mjs';

/** Tests that take longer than this wait until the quick ones have had their turn. */
const QUICK_MS = 50;

const named = (file) => relative(root, file);

/** What each file's tests reach, each looked at by itself; a file that fails as it is cannot judge. */
const lookAtAll = async (tests, print) => {
  const looks = [];
  for (const file of tests.files) {
    const { answers, passed } = await tests.run([file], { does: 'look' });
    if (!passed) print(`left out, as it fails without a mutant: ${named(file)}`);
    else looks.push({ file, seen: answers.filter(({ test }) => test), loading: answers.at(-1).loading });
  }
  return looks;
};

/** Runs of one file's quick or slow tests that can be repeated, cheapest first. */
const turnsOf = (looks) =>
  [(ms) => ms <= QUICK_MS, (ms) => ms > QUICK_MS].flatMap((fits) =>
    looks
      .map(({ file, seen }) => {
        const its = seen.filter(({ repeatable, ms }) => repeatable && fits(ms));
        return { file, its, ms: its.reduce((sum, { ms }) => sum + ms, 0) };
      })
      .sort((a, b) => a.ms - b.ms),
  );

/** The mutants of a plan that are still to be tried, by test. */
const planFor = (its, alive) => {
  const entries = its.map(({ test, again }) => [
    test,
    Object.entries(again).filter(([mutant]) => alive.has(mutant)),
  ]);
  return Object.fromEntries(entries.filter(([, mutants]) => mutants.length > 0));
};

/**
 * Tries every mutant: first by switching it on within a loaded test, which is quick; then, for those alive that are
 * reached while files load or by a test that cannot be repeated, by loading everything anew.
 *
 * Sets `fate` of each mutant: 'killed', 'hung' (killed by the time), 'survived' or 'unreached'.
 */
export const tryAll = async (tests, mutants, print) => {
  const alive = new Map(mutants.map((mutant) => [mutant.id, mutant]));
  const settle = (id, fate) => {
    const mutant = alive.get(id);
    if (mutant) mutant.fate = fate;
    alive.delete(id);
  };

  print(`${mutants.length} mutants, ${tests.files.length} files of tests`);
  const looks = await lookAtAll(tests, print);
  const reloads = new Map();
  const reload = (mutant, file) => {
    if (!reloads.has(mutant)) reloads.set(mutant, new Set());
    reloads.get(mutant).add(file);
  };
  const reached = new Set();
  for (const { file, seen, loading } of looks) {
    for (const mutant of Object.keys(loading)) reload(mutant, file);
    for (const { first, again, repeatable } of seen) {
      for (const mutant of Object.keys(first)) {
        reached.add(mutant);
        if (!repeatable || !(mutant in again)) reload(mutant, file);
      }
    }
  }

  for (const { file, its } of turnsOf(looks)) {
    for (;;) {
      const planned = planFor(its, alive);
      if (Object.keys(planned).length === 0) break;
      const { answers, hung } = await tests.run([file], { does: 'switch', tests: planned });
      const doubted = new Set(answers.flatMap((answer) => answer.doubted ?? []));
      for (const mutant of doubted) reload(mutant, file);
      for (const { killed } of answers) if (killed && !doubted.has(killed)) settle(killed, 'killed');
      if (hung === undefined) break;
      settle(hung, 'hung');
    }
  }

  const anew = [...alive.keys()].filter((mutant) => reloads.has(mutant));
  print(`${mutants.length - alive.size} killed by switching; ${anew.length} more to load anew`);
  const cost = new Map(looks.map(({ file, seen }) => [file, seen.reduce((sum, { ms }) => sum + ms, 0)]));
  for (const mutant of anew) {
    const files = [...reloads.get(mutant)].sort((a, b) => cost.get(a) - cost.get(b));
    const { passed, hung } = await tests.run(files, { does: 'load', mutant });
    if (!passed) settle(mutant, hung === undefined ? 'killed' : 'hung');
  }
  for (const [id, mutant] of alive) {
    mutant.fate = reached.has(id) || reloads.has(id) ? 'survived' : 'unreached';
  }
};
