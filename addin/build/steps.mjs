import { spawnSync } from 'node:child_process';
import { join } from 'node:path';

import { root } from './paths.mjs';

const tool = (path, ...words) => [process.execPath, join(root, 'node_modules', path), ...words];

/** What must hold before a test runs: format, lint, types. */
export const CHECKS = {
  format: tool(
    'prettier/bin/prettier.cjs',
    '--check',
    '--log-level=warn',
    '--ignore-path',
    '.gitignore',
    '.',
  ),
  lint: tool('eslint/bin/eslint.js', '-c', 'addin/build/eslint.config.mjs', '--max-warnings=0', '.'),
  types: tool('typescript/bin/tsc', '-p', 'tsconfig.json'),
};

/** Runs the commands one after another; returns the names of those that failed. */
export const failures = (commands) =>
  Object.entries(commands)
    .filter(([name, [command, ...words]]) => {
      console.log(`\n— ${name}`);
      return spawnSync(command, words, { cwd: root, stdio: 'inherit' }).status !== 0;
    })
    .map(([name]) => name);

export const VITEST = tool('vitest/vitest.mjs', 'run', '--config', 'addin/build/vitest.config.mjs');
