import { spawn } from 'node:child_process';
import { once } from 'node:events';
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

/** Runs a command, shows what it said once it ended, and tells whether it went well. */
const holds = async (name, [command, ...words]) => {
  const child = spawn(command, words, { cwd: root, stdio: ['ignore', 'pipe', 'pipe'] });
  let said = '';
  for (const stream of [child.stdout, child.stderr])
    stream.setEncoding('utf8').on('data', (part) => (said += part));
  const [code] = await once(child, 'close');
  console.log(`\n— ${name}${code === 0 ? '' : ', not in order'}\n${said}`.trimEnd());
  return code === 0;
};

/** Runs the commands beside one another; returns the names of those that failed. */
export const failures = async (commands) => {
  const results = await Promise.all(
    Object.entries(commands).map(async ([name, command]) => [name, await holds(name, command)]),
  );
  return results.filter(([, held]) => !held).map(([name]) => name);
};
