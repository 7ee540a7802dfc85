import { defineConfig } from 'vitest/config';

const root = new URL('../../', import.meta.url).pathname;

/** Tests that measure how long Calc is held, or type and click by the clock; most of their time they wait. */
const BY_THE_CLOCK = ['tests/hosts/calc/{engine,window}/**/*.test.ts'];

const hosts = { environment: 'node', testTimeout: 120_000, hookTimeout: 180_000 };

export default defineConfig({
  root,
  test: {
    projects: [
      {
        root,
        test: {
          name: 'rooms',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/hosts/**'],
          environment: 'node',
          testTimeout: 30_000,
          hookTimeout: 60_000,
          sequence: { groupOrder: 0 },
        },
      },
      {
        root,
        test: {
          ...hosts,
          name: 'hosts',
          include: ['tests/hosts/**/*.test.ts'],
          exclude: BY_THE_CLOCK,
          maxWorkers: 2,
          sequence: { groupOrder: 1 },
        },
      },
      {
        root,
        test: {
          ...hosts,
          name: 'hosts by the clock',
          include: BY_THE_CLOCK,
          maxWorkers: 2,
          sequence: { groupOrder: 2 },
        },
      },
    ],
  },
});
