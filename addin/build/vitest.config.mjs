import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';

import { ByTurns } from './testOrder.mjs';

const root = new URL('../../', import.meta.url).pathname;

/** Tests that measure how long Calc is held: only two of them run at a time, which wait more than they compute. */
const BY_THE_CLOCK = ['tests/hosts/calc/engine/{badNode,engineCare,paneHang}.test.ts'];

/** A test waits for windows, pages and engines about as long as it computes. */
const workers = availableParallelism() + 1;

/** What fast-check's random inputs begin with: the same in each run, so that a run which passed passes again. */
const seed = Number(process.env.WANDCOUNT_SEED ?? 1);
if (!Number.isInteger(seed)) throw new Error('WANDCOUNT_SEED is to be a whole number.');
process.env.WANDCOUNT_SEED = String(seed);
console.log(`Random inputs begin with ${seed}; WANDCOUNT_SEED=${seed + 1} brings others.`);

/**
 * Projects run one after the other. Files of one worker share its modules, and so the browser and the office that it
 * started for the first of them.
 */
const project = (groupOrder, name, maxWorkers, include, exclude = []) => ({
  root,
  test: {
    name,
    include,
    exclude,
    environment: 'node',
    setupFiles: ['tests/setUp.ts'],
    isolate: false,
    expect: { poll: { timeout: 10_000 } },
    testTimeout: 120_000,
    hookTimeout: 300_000,
    maxWorkers,
    sequence: { groupOrder },
  },
});

export default defineConfig({
  root,
  test: {
    sequence: { sequencer: ByTurns },
    projects: [
      project(0, 'side by side', workers, ['tests/**/*.test.ts'], BY_THE_CLOCK),
      project(1, 'by the clock', 2, BY_THE_CLOCK),
    ],
  },
});
