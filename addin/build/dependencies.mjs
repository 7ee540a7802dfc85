import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

import { root } from './paths.mjs';

const OLDEST_NODE = 20;

/** Installs the npm packages where they are missing or older than the lock file. Uses Node alone. */
export const ensurePackages = () => {
  const major = Number(process.versions.node.split('.')[0]);
  if (major < OLDEST_NODE) {
    throw new Error(`Wandcount needs Node ${OLDEST_NODE} or newer; this is Node ${process.versions.node}.`);
  }
  const lock = createHash('sha256')
    .update(readFileSync(join(root, 'package-lock.json')))
    .digest('hex');
  const mark = join(root, 'node_modules', '.wandcount-lock');
  if (existsSync(mark) && readFileSync(mark, 'utf8') === lock) return;
  console.log('Installing what Wandcount is built from (once, about a minute) …');
  // npm is a script on Windows, which only a shell starts.
  const windows = process.platform === 'win32';
  const npm = spawnSync('npm', ['ci', '--include=dev', '--no-audit', '--no-fund', '--loglevel=error'], {
    cwd: root,
    stdio: 'inherit',
    shell: windows,
  });
  if (npm.status !== 0) {
    throw new Error(
      'npm could not install the packages. Its own message stands above; check the network and try again.',
    );
  }
  writeFileSync(mark, lock);
};
