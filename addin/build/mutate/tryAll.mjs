import { relative } from 'node:path';

import { root } from '../paths.mjs';

/**
 * Tries every mutant: first by switching it on within a loaded test, which is quick; then, for those alive that are
 * reached while files load or by a test that cannot be repeated, by loading everything anew.
 *
 * Sets `fate` of each mutant: 'killed', 'hung' (killed by the time), 'survived' or 'unreached'.
 */
export const tryAll = async (tests, mutants, print) => {
  const alive = new Map(mutants.map((mutant) => [mutant.id, mutant]));
  const settle = (id, fate) => {
    if (alive.has(id)) alive.get(id).fate = fate;
    alive.delete(id);
  };

  print(`${mutants.length} mutants, ${tests.files.length} files of tests`);
  const { answers, failed } = await tests.run(tests.files, { does: 'look' });
  for (const file of failed) print(`left out, as it fails without a mutant: ${relative(root, file)}`);
  const seen = answers.filter(({ file }) => !failed.includes(file));
  const costs = new Map();
  for (const { file, ms } of seen) costs.set(file, (costs.get(file) ?? 0) + ms);
  const cheapFirst = [...costs.keys()].sort((a, b) => costs.get(a) - costs.get(b));
  const reload = new Set(seen.flatMap(({ once }) => once));
  const reached = new Set(seen.flatMap(({ once, again }) => [...once, ...Object.keys(again)]));

  const done = new Set();
  const doubted = new Set();
  const untried = ([id]) => alive.has(id) && !doubted.has(id);
  for (;;) {
    const planned = seen
      .filter(({ test }) => !done.has(test))
      .map(({ test, file, again }) => ({ test, file, its: Object.entries(again).filter(untried) }))
      .filter(({ its }) => its.length > 0);
    if (planned.length === 0) break;
    const files = new Set(planned.map(({ file }) => file));
    const { answers, hung } = await tests.run(
      cheapFirst.filter((file) => files.has(file)),
      { does: 'switch', tests: Object.fromEntries(planned.map(({ test, its }) => [test, its])) },
    );
    for (const answer of answers) {
      done.add(answer.done);
      for (const id of answer.killed ?? []) settle(id, 'killed');
      for (const id of answer.doubted ?? []) doubted.add(id);
    }
    if (hung !== undefined) settle(hung, 'hung');
    else if (!answers.some((answer) => answer.doubted)) break;
  }

  const anew = [...alive.keys()].filter((id) => reload.has(id) || doubted.has(id));
  print(`${mutants.length - alive.size} killed by switching; ${anew.length} more to load anew`);
  // What reaches its source is the likeliest to see it.
  const sources = new Map(mutants.map(({ id, file }) => [id, file]));
  const reaches = seen.map(({ file, again }) => [
    file,
    new Set(Object.keys(again).map((id) => sources.get(id))),
  ]);
  for (const mutant of anew) {
    const near = new Set(reaches.filter(([, its]) => its.has(sources.get(mutant))).map(([file]) => file));
    const order = [...cheapFirst].sort((a, b) => near.has(b) - near.has(a));
    const { passed, hung } = await tests.run(order, { does: 'load', mutant });
    if (!passed) settle(mutant, hung === undefined ? 'killed' : 'hung');
  }
  for (const [id, mutant] of alive) mutant.fate = reached.has(id) ? 'survived' : 'unreached';
};
