import { spawnSync } from 'node:child_process';
import { existsSync, statSync } from 'node:fs';
import { join } from 'node:path';

import { root } from './paths.mjs';

const OLDEST_NODE = 20;

/** Installs the npm packages where they are missing or older than the lock file. Uses Node alone. */
export const ensurePackages = () => {
  const major = Number(process.versions.node.split('.')[0]);
  if (major < OLDEST_NODE) {
    throw new Error(`Wandcount needs Node ${OLDEST_NODE} or newer; this is Node ${process.versions.node}.`);
  }
  // npm writes this file last, so it is there and newer than the lock file only after a whole installation.
  const installed = join(root, 'node_modules', '.package-lock.json');
  if (
    existsSync(installed) &&
    statSync(installed).mtimeMs >= statSync(join(root, 'package-lock.json')).mtimeMs
  )
    return;
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
};
