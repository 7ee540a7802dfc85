import { spawnSync } from 'node:child_process';
import { existsSync, lstatSync, statSync } from 'node:fs';
import { join } from 'node:path';

import { root } from './paths.mjs';

/** Whether the build and the tests run on this Node, as `engines` of package.json says. */
const serves = (major, minor) => (major === 20 && minor >= 19) || (major === 22 && minor >= 12) || major > 22;

/** Installs the npm packages where they are missing or older than the lock file. Uses Node alone. */
export const ensurePackages = () => {
  const { node } = process.versions;
  if (!serves(...node.split('.').map(Number))) {
    throw new Error(
      `Wandcount needs Node 20.19 or newer (of Node 22, 22.12 or newer) to build; this is Node ${node}.`,
    );
  }
  // npm writes this file last, so it is there and newer than the lock file only after a whole installation.
  const installed = join(root, 'node_modules', '.package-lock.json');
  if (
    existsSync(installed) &&
    statSync(installed).mtimeMs >= statSync(join(root, 'package-lock.json')).mtimeMs
  )
    return;
  if (lstatSync(join(root, 'node_modules'), { throwIfNoEntry: false })?.isSymbolicLink()) {
    throw new Error(
      'node_modules is a link, and npm would empty the folder that it leads to. Remove the link and try again.',
    );
  }
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
