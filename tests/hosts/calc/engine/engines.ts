import { chmodSync, existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';

import type { Office } from '../office';

/* What the tests of the engine's care and of node programs share. */

export const SECONDS = '=FEED.SECONDS(B1;"gal";2.8;"gal/min")';

export interface View {
  readonly pieces: readonly {
    readonly text?: string;
    readonly buttons?: readonly { readonly label: string }[];
  }[];
}

/** All words of a view, one piece a line. */
export const words = ({ pieces }: View): string =>
  pieces.flatMap(({ text = '', buttons = [] }) => [text, ...buttons.map(({ label }) => label)]).join('\n');

/** What the pane shows, after an event where there is one. */
export const paneOf = (office: Office, doc: string, event?: object): Promise<View> =>
  office.ask<View>({ do: 'job', doc, request: event === undefined ? {} : { event } });

export const logOf = ({ userFolder }: Office): string => {
  const file = join(userFolder, 'wandcount.log');
  return existsSync(file) ? readFileSync(file, 'utf8') : '';
};

/** Numbers of the engines that were started, the last one last. */
export const engines = (office: Office): number[] =>
  [...logOf(office).matchAll(/engine (\d+) started/g)].map(([, pid]) => Number(pid));

export const alive = (pid: number): boolean => {
  try {
    process.kill(pid, 0);
    return true;
  } catch {
    return false;
  }
};

/** Of Linux, as every program there is told. */
const TICKS_A_SECOND = 100;

/** Processor seconds that a process has used: unlike the clock's they do not grow with what else the computer does. */
export const processorSeconds = (pid: number): number => {
  const stat = readFileSync(`/proc/${pid}/stat`, 'utf8');
  const [user = 0, system = 0] = stat.slice(stat.lastIndexOf(')')).split(' ').slice(12, 14).map(Number);
  return (user + system) / TICKS_A_SECOND;
};

/** How many threads a process has. */
export const threads = (pid: number): number => readdirSync(`/proc/${pid}/task`).length;

export const until = async (holds: () => boolean | Promise<boolean>, ms: number): Promise<boolean> => {
  for (const end = Date.now() + ms; Date.now() < end; await pause(50)) if (await holds()) return true;
  return holds();
};

/** Seconds that some work takes. */
export const timed = async (work: () => Promise<unknown>): Promise<number> => {
  const began = performance.now();
  await work();
  return (performance.now() - began) / 1000;
};

/** A program that the shell runs, made with the folders above it; returns its path. */
export const program = (path: string, script: string): string => {
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, `#!/bin/sh\n${script}\n`);
  chmodSync(path, 0o755);
  return path;
};

/** The Node that runs the tests. */
export const NODE = `'${process.execPath}'`;

/** What a program does that says which Node it is, and then only listens. */
export const saysOnly = (version: string): string => `echo '{"ready":"${version}"}'\nexec cat > /dev/null`;
