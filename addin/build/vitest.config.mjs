import { defineConfig } from 'vitest/config';

const root = new URL('../../', import.meta.url).pathname;

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
        },
      },
      {
        root,
        test: {
          name: 'hosts',
          include: ['tests/hosts/**/*.test.ts'],
          environment: 'node',
          testTimeout: 120_000,
          hookTimeout: 180_000,
          fileParallelism: false,
        },
      },
    ],
  },
});
