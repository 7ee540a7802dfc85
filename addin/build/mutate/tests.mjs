import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

import { createVitest } from 'vitest/node';

import { root } from '../paths.mjs';

const EVERY_MS = 1000;
/** One run of one test takes far less. */
const LONGEST_MS = 45_000;

/** They build, compile or read the sources and see no mutant; the live card takes minutes of each that is left. */
const BLIND = [
  'tests/core/forbidden.test.ts',
  'tests/functions/{builtFile,reference}.test.ts',
  'tests/properties/liveCard.test.ts',
  'tests/taskpane/contrast.test.ts',
];

/** Ends the worker that has tried one mutant for too long; it is one that this run started. */
const watched = async (folder, run) => {
  const path = join(folder, 'now.json');
  let hung;
  let last = '';
  let since = Date.now();
  const timer = setInterval(() => {
    const now = existsSync(path) ? readFileSync(path, 'utf8') : '';
    if (now !== last) {
      last = now;
      since = Date.now();
    } else if (now.includes('"mutant"') && Date.now() - since > LONGEST_MS) {
      const { pid, mutant } = JSON.parse(now);
      hung = mutant;
      process.kill(pid, 'SIGKILL');
    }
  }, EVERY_MS);
  try {
    return { ...(await run()), hung };
  } catch (error) {
    if (hung === undefined) throw error;
    return { hung };
  } finally {
    clearInterval(timer);
  }
};

/** Vitest over instrumented sources, in one worker, one plan at a time. */
export const openTests = async (folder, sources, filters) => {
  process.env.WANDCOUNT_MUTANTS = folder;
  // Random inputs are the same in each run, as in `npm test`.
  process.env.WANDCOUNT_SEED ??= '1';
  let order = [];
  class InOrder {
    shard = (specifications) => specifications;
    sort = (specifications) =>
      [...specifications].sort((a, b) => order.indexOf(a.moduleId) - order.indexOf(b.moduleId));
  }
  const vitest = await createVitest(
    'test',
    {
      root,
      config: false,
      watch: false,
      include: ['tests/**/*.test.ts'],
      exclude: BLIND,
      setupFiles: ['tests/setUp.ts'],
      pool: 'forks',
      maxWorkers: 1,
      isolate: false,
      testTimeout: 120_000,
      hookTimeout: 180_000,
      runner: join(root, 'addin/build/mutate/runner.mjs'),
      sequence: { sequencer: InOrder },
      reporters: [{}],
      dangerouslyIgnoreUnhandledErrors: true,
    },
    {
      plugins: [
        {
          name: 'mutants',
          enforce: 'pre',
          load: (id) => {
            const copy = sources.get(id.split('?')[0]);
            return copy === undefined ? undefined : readFileSync(copy, 'utf8');
          },
        },
      ],
    },
  );
  const all = new Map(
    (await vitest.globTestSpecifications(filters)).map((specification) => [
      specification.moduleId,
      specification,
    ]),
  );

  return {
    files: [...all.keys()],
    close: () => vitest.close(),
    /**
     * Runs the files in this order by a plan; answers what the worker told, the files that failed, and whether all
     * passed.
     */
    run: async (files, plan) => {
      order = files;
      writeFileSync(join(folder, 'plan.json'), JSON.stringify(plan));
      for (const name of ['told.jsonl', 'now.json']) rmSync(join(folder, name), { force: true });
      const { testModules = [], hung } = await watched(folder, () =>
        vitest.runTestSpecifications(files.map((file) => all.get(file))),
      );
      const told = join(folder, 'told.jsonl');
      const lines = existsSync(told) ? readFileSync(told, 'utf8').trim().split('\n').filter(Boolean) : [];
      const answers = lines.map((line) => JSON.parse(line));
      const failed = testModules.filter((one) => !one.ok()).map(({ moduleId }) => moduleId);
      const whole = hung === undefined && testModules.length > 0 && failed.length === 0;
      const passed = whole && !answers.some(({ killed }) => killed);
      return { answers, failed, passed, hung };
    },
  };
};
