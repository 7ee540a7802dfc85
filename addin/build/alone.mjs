import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';

import { dist } from './paths.mjs';

const BETWEEN_LOOKS = 100;

const runs = (pid) => {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    // A process of another user may not be sent a signal, and runs.
    return error.code === 'EPERM';
  }
};

/** Takes the lock; false where another process that still runs has it. */
const taken = (lock) => {
  try {
    writeFileSync(lock, String(process.pid), { flag: 'wx' });
    return true;
  } catch (error) {
    if (error.code !== 'EEXIST') throw error;
  }
  // The owner may be between making the file and writing its number into it.
  const owner = existsSync(lock) ? readFileSync(lock, 'utf8') : '';
  if (owner !== '' && !runs(Number(owner))) rmSync(lock, { force: true });
  return false;
};

/** Does what only one process may do at a time; waits for the one that is at it, unless that one died. */
export const alone = async (name, work) => {
  const folder = join(dist, 'made');
  mkdirSync(folder, { recursive: true });
  const lock = join(folder, `${name}.lock`);
  while (!taken(lock)) await pause(BETWEEN_LOOKS);
  try {
    return await work();
  } finally {
    rmSync(lock, { force: true });
  }
};
