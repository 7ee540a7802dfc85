import { spawn, spawnSync, type ChildProcess } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import type { Socket } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { setTimeout as pause } from 'node:timers/promises';

import { alone } from '../../../addin/build/alone.mjs';
import { root } from '../../../addin/build/paths.mjs';
import { findProgram } from '../../../addin/build/programs.mjs';
import { buildExtension, extension } from '../../../addin/build/calc/makeExtension.mjs';

import { paneExtension } from './paneExtension';

/** What the driver is to do, and what it needs for it. */
interface Request {
  readonly do: string;
  readonly [key: string]: unknown;
}

/** A LibreOffice with a profile of its own, driven through its UNO bridge by the system's Python. */
export interface Office {
  /** Folder for the files of this test. */
  readonly folder: string;
  /** The user's folder in the profile. */
  readonly userFolder: string;
  /** The office's own processes, the last one the office itself. */
  pids(): readonly number[];
  /** Rejects where there is no answer within the seconds, 60 unless told. */
  ask<Answer = unknown>(request: Request, seconds?: number): Promise<Answer>;
  /** Ends the office within some seconds, by force where it does not answer. */
  end(): Promise<void>;
}

export interface Start {
  /** More of the environment; undefined takes a setting away. */
  readonly env?: Readonly<Record<string, string | undefined>>;
  /** False for an office without the extension. */
  readonly extension?: boolean;
  /** Language and region of the user, such as "de-DE". */
  readonly locale?: string;
  /** True for a window on a display, false for headless. */
  readonly window?: boolean;
}

const SOFFICE = findProgram('soffice') ?? 'soffice';
/** A Python that has the office's own module `uno`. */
export const PYTHON = process.env.WANDCOUNT_OFFICE_PYTHON ?? '/usr/bin/python3';
const DRIVER = join(root, 'tests', 'hosts', 'calc', 'driver.py');

/** Seconds that an office may take to answer. */
const LONGEST_ANSWER = 60;

const running = (child: ChildProcess): boolean => child.exitCode === null && child.signalCode === null;

const ended = (child: ChildProcess): Promise<void> =>
  running(child) ? new Promise((resolve) => child.once('exit', () => resolve())) : Promise.resolve();

/** A request as a test reads it. */
const named = (request: Request): string =>
  [request.do, request.command, request.path, JSON.stringify(request.request)]
    .filter((part) => typeof part === 'string')
    .join(' ')
    .slice(0, 120);

interface Waiting {
  resolve(value: unknown): void;
  reject(reason: Error): void;
}

/** The driver's answers by number; none is waited for without end. */
const startDriver = () => {
  const child = spawn(PYTHON, ['-B', '-u', DRIVER], { stdio: ['pipe', 'pipe', 'inherit'] });
  const waiting = new Map<number, Waiting>();
  let last = 0;
  /** Why no more is asked: an office that hung once does not come back. */
  let over: Error | undefined;
  createInterface({ input: child.stdout }).on('line', (line) => {
    const { id, value, failed } = JSON.parse(line) as { id: number; value?: unknown; failed?: string };
    const asked = waiting.get(id);
    waiting.delete(id);
    if (failed === undefined) asked?.resolve(value);
    else asked?.reject(new Error(failed));
  });
  const stop = (reason: Error): void => {
    over ??= reason;
    for (const { reject } of waiting.values()) reject(over);
    waiting.clear();
  };
  child.once('exit', (code) => stop(new Error(`The driver ended with ${code}.`)));
  child.stdin.on('error', stop);
  // A driver that nobody ends, as where its test file fails to load, must not keep the tests from ending.
  child.unref();
  for (const pipe of [child.stdin, child.stdout]) (pipe as unknown as Socket).unref();
  return {
    /** False from the moment a request had no answer in time. */
    answers: () => over === undefined,
    ask: (request: Request, seconds = LONGEST_ANSWER): Promise<unknown> => {
      if (over !== undefined) return Promise.reject(over);
      return new Promise((resolve, reject) => {
        last += 1;
        const late = setTimeout(
          () => stop(new Error(`LibreOffice did not answer “${named(request)}” within ${seconds} s.`)),
          seconds * 1_000,
        );
        waiting.set(last, {
          resolve: (value) => {
            clearTimeout(late);
            resolve(value);
          },
          reject: (reason) => {
            clearTimeout(late);
            reject(reason);
          },
        });
        child.stdin.write(`${JSON.stringify({ id: last, ...request })}\n`);
      });
    },
    end: async () => {
      child.stdin.end();
      await Promise.race([ended(child), pause(3_000)]);
      child.kill('SIGKILL');
    },
  };
};

/** Processes that were started with a profile. */
const processesOf = (profile: string): number[] =>
  spawnSync('pgrep', ['-f', `UserInstallation=file://${profile}`], { encoding: 'utf8' })
    .stdout.split('\n')
    .filter(Boolean)
    .map(Number);

const kill = (profile: string): void => {
  for (const pid of processesOf(profile))
    try {
      process.kill(pid, 'SIGKILL');
    } catch (error) {
      // It ended by itself between the two.
      if ((error as NodeJS.ErrnoException).code !== 'ESRCH') throw error;
    }
};

/** Profiles of the offices that run, and their folders; they go with the tests, however these end. */
const inUse = new Set<string>();
const folders = new Set<string>();
const remove = (folder: string): void => {
  rmSync(folder, { recursive: true, force: true });
  folders.delete(folder);
};
process.once('exit', () => {
  inUse.forEach(kill);
  folders.forEach(remove);
});
// So ends a worker that has no more files to test, and by itself that is no exit.
process.once('SIGTERM', () => process.exit());

let offices = 0;

/** Seconds in which an office starts and runs its main loop. */
const STARTING = 60;

/** Seconds that an office is given to end by itself. */
const ENDING = 10;

const launch = async (profile: string, start: Start): Promise<Omit<Office, 'folder'>> => {
  const { env = {}, window = false } = start;
  offices += 1;
  const pipe = `wandcount-${process.pid}-${offices}`;
  const words = [
    ...(window ? [] : ['--headless']),
    '--norestore',
    '--nologo',
    '--nodefault',
    `-env:UserInstallation=file://${profile}`,
    `--accept=pipe,name=${pipe};urp;`,
  ];
  inUse.add(profile);
  const child = spawn(SOFFICE, words, { stdio: 'ignore', env: { ...process.env, ...env }, detached: true });
  child.unref();
  const driver = startDriver();
  const end = async (): Promise<void> => {
    const until = Date.now() + ENDING * 1_000;
    // An office that is still busy with itself says no; the bridge goes away with it, so an answer may never come.
    while (running(child) && driver.answers() && Date.now() < until) {
      void driver.ask({ do: 'end' }).catch(() => undefined);
      await Promise.race([ended(child), pause(3_000)]);
    }
    kill(profile);
    await driver.end();
    inUse.delete(profile);
  };
  try {
    await driver.ask({ do: 'connect', pipe, seconds: STARTING }, STARTING + 10);
  } catch (error) {
    await end();
    throw error;
  }
  return {
    pids: () => processesOf(profile),
    userFolder: join(profile, 'user'),
    ask: driver.ask as Office['ask'],
    end,
  };
};

const prepared = join(tmpdir(), 'wandcount-calc-profiles');

/** A profile with the extension installed, made once for the same extension. */
const profileWithExtension = async (): Promise<string> => {
  await buildExtension();
  const ours = paneExtension();
  const profile = join(
    prepared,
    createHash('sha256').update(readFileSync(extension)).update(ours).digest('hex').slice(0, 16),
  );
  await alone('calc-profile', async () => {
    if (existsSync(profile)) return;
    mkdirSync(prepared, { recursive: true });
    const fresh = mkdtempSync(join(prepared, 'installing-'));
    const office = await launch(fresh, {});
    await office.ask({ do: 'install', path: extension });
    writeFileSync(join(fresh, 'pane.oxt'), ours);
    await office.ask({ do: 'install', path: join(fresh, 'pane.oxt') });
    await office.end();
    renameSync(fresh, profile);
  });
  return profile;
};

/** Language and region of the user, as the office keeps them. */
const setLocale = (profile: string, locale: string): void => {
  const file = join(profile, 'user', 'registrymodifications.xcu');
  const item =
    '<item oor:path="/org.openoffice.Setup/L10N"><prop oor:name="ooSetupSystemLocale" oor:op="fuse">' +
    `<value>${locale}</value></prop></item>`;
  writeFileSync(file, readFileSync(file, 'utf8').replace('</oor:items>', `${item}</oor:items>`));
};

/** Starts an office; end it before the test file ends. */
export const startOffice = async (start: Start = {}): Promise<Office> => {
  const folder = mkdtempSync(join(tmpdir(), 'wandcount-calc-'));
  folders.add(folder);
  const profile = join(folder, 'profile');
  if (start.extension !== false) cpSync(await profileWithExtension(), profile, { recursive: true });
  if (start.locale !== undefined) setLocale(profile, start.locale);
  const office = await launch(profile, start);
  return {
    ...office,
    folder,
    end: async () => {
      await office.end();
      remove(folder);
    },
  };
};

let shared: Promise<Office> | undefined;

/**
 * The one office of this worker, for tests that need none of their own: they leave its engines alone, and do not read
 * its log. To end it closes the documents of the test file; the office goes on, unless it does not answer.
 */
export const sharedOffice = async (): Promise<Office> => {
  shared ??= startOffice();
  const office = await shared;
  const folder = mkdtempSync(join(office.folder, 'file-'));
  return {
    ...office,
    folder,
    end: async () => {
      try {
        await office.ask({ do: 'close_all' });
      } catch {
        shared = undefined;
        await office.end();
      }
    },
  };
};
