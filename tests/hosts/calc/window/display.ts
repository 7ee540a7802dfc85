import { spawn, spawnSync, type ChildProcess, type SpawnOptions } from 'node:child_process';
import { once } from 'node:events';
import { mkdirSync } from 'node:fs';
import type { Socket } from 'node:net';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { expect, vi } from 'vitest';

import { root } from '../../../../addin/build/paths.mjs';
import { findProgram } from '../../../../addin/build/programs.mjs';

/** A screen of its own with a window manager, for an office in a window. */
export interface Display {
  /** What programs need to draw on it. */
  readonly env: Readonly<Record<string, string>>;
  /** Runs xdotool: keys, clicks, sizes. */
  act(...words: readonly string[]): void;
  /** Waits until a window is seen whose title is like the pattern. */
  expectWindow(title: string): Promise<void>;
  /** Waits until a window whose title is like the pattern gets the keys. */
  expectKeysTo(title: RegExp): Promise<void>;
  /** Waits until no such window is seen. */
  expectNoWindow(title: string): Promise<void>;
  /** Does what opens a window, and waits until that one gets the keys. */
  opens(act: () => unknown): Promise<void>;
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

const started = new Set<ChildProcess>();
const end = (child: ChildProcess): void => {
  child.kill();
  started.delete(child);
};
process.once('exit', () => started.forEach(end));

/** Seconds in which the screen is there. */
const LONGEST_START = 30;

/** How windows are waited for, ms. */
export const WINDOWS = { timeout: 30_000, interval: 100 };

/** Starts a program that must not keep the tests from ending. */
const begin = (id: string, words: readonly string[], options: SpawnOptions): ChildProcess => {
  const child = spawn(program(id), words, options);
  child.unref();
  started.add(child);
  return child;
};

/** A screen with a number that no other screen of this computer has; it tells it when it is ready. */
const startScreen = async (size: string): Promise<[ChildProcess, string]> => {
  // It says its number again whenever the last window is gone, unless it is told to stay as it is.
  const words = ['-displayfd', '3', '-noreset', '-screen', '0', size];
  const screen = begin('Xvfb', words, { stdio: ['ignore', 'ignore', 'ignore', 'pipe'] });
  const told = screen.stdio[3] as Socket;
  const number = await Promise.race([
    once(told, 'data').then(([data]) => String(data).trim()),
    pause(LONGEST_START * 1_000, undefined, { ref: false }),
  ]);
  told.unref();
  if (number === undefined || !/^\d+$/.test(number)) {
    end(screen);
    throw new Error(`Xvfb opened no display within ${LONGEST_START} s.`);
  }
  return [screen, `:${number}`];
};

export const openDisplay = async (width = 1280, height = 900): Promise<Display> => {
  const [screen, DISPLAY] = await startScreen(`${width}x${height}x24`);
  const env = { DISPLAY, NO_AT_BRIDGE: '1', GDK_BACKEND: 'x11' };
  const all = { ...process.env, ...env };
  const manager = begin('openbox', [], { stdio: 'ignore', env: all });
  const run = (id: string, words: readonly string[]): void => {
    const { status, stderr } = spawnSync(program(id), words, { env: all, encoding: 'utf8', timeout: 30_000 });
    if (status !== 0) throw new Error(`${id} ${words.join(' ')}: ${stderr}`);
  };
  const act = (...words: readonly string[]): void => run('xdotool', words);
  /** It fails where there is no such window. */
  const search = (title: string): void => act('search', '--onlyvisible', '--name', title);
  /** The number of the window that gets the keys, empty while none does. */
  const active = (): string =>
    spawnSync(program('xdotool'), ['getactivewindow'], { env: all, encoding: 'utf8' }).stdout.trim();
  // The window manager is there as soon as it tells of its desktops.
  await vi.waitFor(() => act('get_num_desktops'), WINDOWS);
  return {
    env,
    act,
    expectWindow: (title) => vi.waitFor(() => search(title), WINDOWS),
    expectKeysTo: (title) =>
      vi.waitFor(() => {
        const named = spawnSync(program('xdotool'), ['getactivewindow', 'getwindowname'], {
          env: all,
          encoding: 'utf8',
        });
        expect(named.stdout).toMatch(title);
      }, WINDOWS),
    expectNoWindow: (title) => vi.waitFor(() => expect(() => search(title)).toThrow(), WINDOWS),
    opens: async (act) => {
      const before = active();
      await act();
      await vi.waitUntil(() => !['', before].includes(active()), WINDOWS);
    },
    picture: (name) => {
      mkdirSync(pictures, { recursive: true });
      const path = join(pictures, `${name}.png`);
      run('import', ['-window', 'root', path]);
      return path;
    },
    end: () => [manager, screen].forEach(end),
  };
};
