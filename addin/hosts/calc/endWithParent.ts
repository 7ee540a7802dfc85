import { Worker } from 'node:worker_threads';

/** A program that computes without end does not see its stdin end; a thread of its own sees who its parent is. */
const WATCH = `
  const { workerData: parent } = require('node:worker_threads');
  setInterval(() => {
    if (process.ppid !== parent) process.kill(process.pid, 'SIGKILL');
  }, 1_000);
`;

/** Milliseconds that the first answers have to themselves: a thread takes some time to start. */
const FIRST = 1_000;

/** Ends this program within about a second of its parent's end. Windows never names another parent: not there. */
export const endWithParent = (): void => {
  if (process.platform === 'win32') return;
  const { ppid } = process;
  setTimeout(() => new Worker(WATCH, { eval: true, workerData: ppid }).unref(), FIRST).unref();
};
