import { defineConfig } from 'vitest/config';

const root = new URL('../../', import.meta.url).pathname;

/** Tests that measure how long Calc is held: nothing else runs beside them. */
const BY_THE_CLOCK = ['tests/hosts/calc/engine/**/*.test.ts'];
/** Tests that wait for a window most of their time. */
const IN_A_WINDOW = ['tests/hosts/calc/window/**/*.test.ts'];

/** Projects run one after the other. */
const project = (groupOrder, name, maxWorkers, include, exclude = []) => ({
  root,
  test: {
    name,
    include,
    exclude,
    environment: 'node',
    testTimeout: 120_000,
    hookTimeout: 180_000,
    maxWorkers,
    sequence: { groupOrder },
  },
});

export default defineConfig({
  root,
  test: {
    projects: [
      project(0, 'rooms', undefined, ['tests/**/*.test.ts'], ['tests/hosts/**']),
      project(1, 'hosts', 1, ['tests/hosts/**/*.test.ts'], [...BY_THE_CLOCK, ...IN_A_WINDOW]),
      project(2, 'windows', 2, IN_A_WINDOW),
      project(3, 'by the clock', 1, BY_THE_CLOCK),
    ],
  },
});
