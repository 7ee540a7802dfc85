import { spawn, spawnSync, type ChildProcess } from 'node:child_process';
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';

import { root } from '../../../addin/build/paths.mjs';
import { findProgram } from '../../../addin/build/programs.mjs';

/** A screen of its own with a window manager, for an office in a window. */
export interface Display {
  /** What programs need to draw on it. */
  readonly env: Readonly<Record<string, string>>;
  /** Runs xdotool: keys, clicks, sizes. */
  act(...words: readonly string[]): void;
  /** Keeps a picture of the screen in tests/output/calc; returns its path. */
  picture(name: string): string;
  end(): void;
}

const program = (id: string): string => {
  const path = findProgram(id);
  if (path === undefined)
    throw new Error(`The tests of Calc's window need ${id}; npm test installs it where it may.`);
  return path;
};

const pictures = join(root, 'tests', 'output', 'calc');

/** A number that no other display of this computer is likely to have. */
let next = 100 + (process.pid % 400);

export const openDisplay = async (width = 1280, height = 900): Promise<Display> => {
  next += 1;
  const DISPLAY = `:${next}`;
  const env = { DISPLAY, NO_AT_BRIDGE: '1', GDK_BACKEND: 'x11' };
  const all = { ...process.env, ...env };
  const started: ChildProcess[] = [
    spawn(program('Xvfb'), [DISPLAY, '-screen', '0', `${width}x${height}x24`], { stdio: 'ignore' }),
  ];
  await pause(800);
  started.push(spawn(program('openbox'), [], { stdio: 'ignore', env: all }));
  await pause(300);
  const run = (id: string, words: readonly string[]): void => {
    const { status, stderr } = spawnSync(program(id), words, { env: all, encoding: 'utf8', timeout: 30_000 });
    if (status !== 0) throw new Error(`${id} ${words.join(' ')}: ${stderr}`);
  };
  return {
    env,
    act: (...words) => run('xdotool', words),
    picture: (name) => {
      mkdirSync(pictures, { recursive: true });
      const path = join(pictures, `${name}.png`);
      run('import', ['-window', 'root', path]);
      return path;
    },
    end: () => started.reverse().forEach((child) => child.kill()),
  };
};
