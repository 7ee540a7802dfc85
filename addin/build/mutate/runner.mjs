import { setMaxListeners } from 'node:events';
import { appendFileSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

import { TestRunner } from 'vitest';
import { getFn } from 'vitest/suite';

/*
 * Runs in the worker, in place of Vitest's own runner. What to do stands in plan.json:
 *
 *   look    each test runs twice without a mutant; told is which mutants it reaches, how often, how long it takes, and
 *           whether it passes again
 *   switch  each test that the plan names runs once without a mutant, then once for each of its mutants
 *   load    one mutant is active from before the first import
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
  const repeatable = await passes(async () => (again = await reached('again')));
  tell({ test: test.id, repeatable, first, again, ms: performance.now() - from });
};

const switchThrough = async (mutants, run) => {
  const killed = [];
  for (const [mutant, hits] of mutants) {
    trying(mutant);
    Object.assign(stryker, { activeMutant: mutant, hitCount: 0, hitLimit: hits * LOOPS + FEW });
    if (await passes(run)) continue;
    killed.push(mutant);
    tell({ killed: mutant });
  }
  Object.assign(stryker, { activeMutant: undefined, hitCount: undefined, hitLimit: undefined });
  trying(undefined);
  // A mutant may leave something behind that fails the test after it: then none of these was seen fairly.
  if (killed.length > 0 && !(await passes(run))) tell({ doubted: killed });
};

export default class MutantRunner extends TestRunner {
  async runTask(test) {
    const run = () => getFn(test)();
    if (plan.does === 'look') return look(test, run);
    if (plan.does === 'load') trying(plan.mutant, test.id);
    await run();
    const mutants = plan.does === 'switch' ? plan.tests[test.id] : undefined;
    if (mutants) await switchThrough(mutants, run);
  }

  onAfterRunFiles() {
    super.onAfterRunFiles?.();
    if (plan.does === 'look') tell({ loading: stryker.mutantCoverage.static });
  }
}
