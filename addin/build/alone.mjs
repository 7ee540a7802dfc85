import { mkdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';

import { dist } from './paths.mjs';

const BETWEEN_LOOKS = 100;
/** Longer than any work takes, ms: the number of a process that died may be another one's by now. */
const LONGEST = 10 * 60_000;

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
const takes = (lock) => {
  try {
    writeFileSync(lock, String(process.pid), { flag: 'wx' });
    return true;
  } catch (error) {
    if (error.code !== 'EEXIST') throw error;
  }
  if (left(lock)) rmSync(lock, { force: true });
  return false;
};

/** True for a lock whose owner died. */
const left = (lock) => {
  const made = statSync(lock, { throwIfNoEntry: false })?.mtimeMs;
  if (made === undefined) return false;
  if (Date.now() - made > LONGEST) return true;
  try {
    const owner = readFileSync(lock, 'utf8');
    // Without a number yet it has just been made.
    return owner !== '' && !runs(Number(owner));
  } catch (error) {
    if (error.code !== 'ENOENT') throw error;
    return false;
  }
};

/** Does what only one process may do at a time; waits for the one that is at it, unless that one died. */
export const alone = async (name, work) => {
  const folder = join(dist, 'made');
  mkdirSync(folder, { recursive: true });
  const lock = join(folder, `${name}.lock`);
  while (!takes(lock)) await pause(BETWEEN_LOOKS);
  try {
    return await work();
  } finally {
    rmSync(lock, { force: true });
  }
};
