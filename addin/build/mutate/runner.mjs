import { setMaxListeners } from 'node:events';
import { appendFileSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

import { TestRunner } from 'vitest';
import { getFn } from 'vitest/suite';

/*
 * Runs in the worker, in place of Vitest's own runner. What to do stands in plan.json:
 *
 *   look    each test runs twice without a mutant; told is which mutants it reaches `again` and how often, which only
 *           `once` or while files load, and how long it takes
 *   switch  each test that the plan names runs once without a mutant, then once for each of its mutants
 *   load    one mutant is active from before the first import, until a test fails
 *
 * Answers are lines of told.jsonl; now.json says what is being tried, for whoever watches the time.
 */
const folder = process.env.WANDCOUNT_MUTANTS;
const plan = JSON.parse(readFileSync(join(folder, 'plan.json'), 'utf8'));
const tell = (answer) => appendFileSync(join(folder, 'told.jsonl'), `${JSON.stringify(answer)}\n`);
const trying = (mutant, test) =>
  writeFileSync(join(folder, 'now.json'), JSON.stringify({ pid: process.pid, mutant, test }));

// A test that runs many times adds a listener to its signal each time.
setMaxListeners(0);

// The name and the fields that instrumented code reads.
const stryker = (globalThis.__stryker__ ??= {});
stryker.mutantCoverage ??= { static: {}, perTest: {} };

// A loop that a mutant made endless asks for that mutant without end.
const LOOPS = 100;
const FEW = 10_000;

if (plan.does === 'load') {
  stryker.activeMutant = plan.mutant;
  trying(plan.mutant);
}

/** Mutants that need no further try. */
const dead = new Set();
/** Nothing more is to be learnt in this worker. */
let over = false;

const passes = async (run) => {
  try {
    await run();
    return true;
  } catch {
    return false;
  }
};

const look = async (test, run) => {
  const reached = async (round) => {
    stryker.currentTestId = `${round} ${test.id}`;
    try {
      await run();
    } finally {
      stryker.currentTestId = undefined;
    }
    return stryker.mutantCoverage.perTest[`${round} ${test.id}`] ?? {};
  };
  const first = await reached('first');
  const from = performance.now();
  let again = {};
  await passes(async () => (again = await reached('again')));
  const once = Object.keys({ ...stryker.mutantCoverage.static, ...first }).filter(
    (mutant) => !(mutant in again),
  );
  tell({ test: test.id, file: test.file.filepath, once, again, ms: performance.now() - from });
};

const switchThrough = async (test, run) => {
  const killed = [];
  for (const [mutant, hits] of plan.tests[test.id]) {
    if (dead.has(mutant)) continue;
    trying(mutant, test.id);
    Object.assign(stryker, { activeMutant: mutant, hitCount: 0, hitLimit: hits * LOOPS + FEW });
    if (await passes(run)) continue;
    killed.push(mutant);
    dead.add(mutant);
  }
  Object.assign(stryker, { activeMutant: undefined, hitCount: undefined, hitLimit: undefined });
  trying();
  // A mutant may leave something behind that fails the tests after it: then none of these was seen fairly.
  over = killed.length > 0 && !(await passes(run));
  tell({ done: test.id, [over ? 'doubted' : 'killed']: killed });
};

export default class MutantRunner extends TestRunner {
  importFile(...file) {
    return over ? undefined : super.importFile(...file);
  }

  async runTask(test) {
    if (over) return;
    const run = () => getFn(test)();
    if (plan.does === 'look') {
      await look(test, run);
    } else if (plan.does === 'load') {
      trying(plan.mutant, test.id);
      over = !(await passes(run));
      if (over) tell({ killed: [plan.mutant] });
    } else {
      await run();
      if (plan.tests[test.id]) await switchThrough(test, run);
    }
  }
}
