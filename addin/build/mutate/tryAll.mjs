import { relative } from 'node:path';

import { root } from '../paths.mjs';

/** Tests that take longer than this wait until the quick ones have had their turn. */
const QUICK_MS = 50;

const byCost = (costs) => (a, b) => (costs.get(a) ?? 0) - (costs.get(b) ?? 0);

/** What each test reaches; a file that fails as it is, or not alone in its process, cannot judge. */
const lookAtAll = async (tests, print) => {
  const { answers, failed } = await tests.run(tests.files, { does: 'look' });
  for (const file of failed) print(`left out, as it fails without a mutant: ${relative(root, file)}`);
  const seen = answers.filter(({ test, file }) => test && !failed.includes(file));
  const costs = new Map();
  for (const { file, ms } of seen) costs.set(file, (costs.get(file) ?? 0) + ms);
  return { seen, costs, loading: new Set(answers.flatMap(({ loading = [] }) => loading)) };
};

/** The mutants that are still to be switched on, by test. */
const planFor = (its, waiting) =>
  Object.fromEntries(
    its
      .map(({ test, again }) => [test, Object.entries(again).filter(([mutant]) => waiting(mutant))])
      .filter(([, mutants]) => mutants.length > 0),
  );

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
  const { seen, costs, loading } = await lookAtAll(tests, print);
  const cheapFirst = [...costs.keys()].sort(byCost(costs));
  const reload = new Set(loading);
  const reached = new Set(loading);
  for (const { first, again, repeatable } of seen) {
    for (const mutant of Object.keys(first)) {
      reached.add(mutant);
      if (!repeatable || !(mutant in again)) reload.add(mutant);
    }
  }

  const done = new Set();
  const doubted = new Set();
  for (const fits of [(ms) => ms <= QUICK_MS, (ms) => ms > QUICK_MS]) {
    for (;;) {
      const its = seen.filter(({ test, repeatable, ms }) => repeatable && fits(ms) && !done.has(test));
      const planned = planFor(its, (mutant) => alive.has(mutant) && !doubted.has(mutant));
      if (Object.keys(planned).length === 0) break;
      const files = new Set(its.filter(({ test }) => planned[test]).map(({ file }) => file));
      const order = cheapFirst.filter((file) => files.has(file));
      const { answers, hung } = await tests.run(order, { does: 'switch', tests: planned });
      for (const answer of answers) {
        done.add(answer.done);
        for (const mutant of answer.killed ?? []) settle(mutant, 'killed');
        for (const mutant of answer.doubted ?? []) doubted.add(mutant);
      }
      if (hung !== undefined) settle(hung, 'hung');
      if (hung === undefined && !answers.some((answer) => answer.doubted)) break;
    }
  }

  const anew = [...alive.keys()].filter((mutant) => reload.has(mutant) || doubted.has(mutant));
  print(`${mutants.length - alive.size} killed by switching; ${anew.length} more to load anew`);
  for (const mutant of anew) {
    const { passed, hung } = await tests.run(cheapFirst, { does: 'load', mutant });
    if (!passed) settle(mutant, hung === undefined ? 'killed' : 'hung');
  }
  for (const [id, mutant] of alive) mutant.fate = reached.has(id) ? 'survived' : 'unreached';
};
