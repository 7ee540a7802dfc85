import { spawn, spawnSync, type ChildProcess } from 'node:child_process';
import { createHash } from 'node:crypto';
import { cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { setTimeout as pause } from 'node:timers/promises';

import { unlessFresh } from '../../../addin/build/freshness.mjs';
import { findProgram } from '../../../addin/build/programs.mjs';
import { extension, makeExtension } from '../../../addin/build/calc/makeExtension.mjs';

/** A LibreOffice with a profile of its own, driven through its UNO bridge by the system's Python. */
export interface Office {
  /** Folder for the files of this test. */
  readonly folder: string;
  /** The user's folder in the profile. */
  readonly userFolder: string;
  /** The office's own processes, the last one the office itself. */
  pids(): readonly number[];
  ask<Answer = unknown>(request: { readonly do: string; readonly [key: string]: unknown }): Promise<Answer>;
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
const PYTHON = process.env.WANDCOUNT_OFFICE_PYTHON ?? '/usr/bin/python3';
const DRIVER = new URL('driver.py', import.meta.url).pathname;

const running = (child: ChildProcess): boolean => child.exitCode === null && child.signalCode === null;

const ended = (child: ChildProcess): Promise<void> =>
  running(child) ? new Promise((resolve) => child.once('exit', () => resolve())) : Promise.resolve();

/** The driver's answers by number. */
const startDriver = () => {
  const child = spawn(PYTHON, ['-u', DRIVER], { stdio: ['pipe', 'pipe', 'inherit'] });
  const waiting = new Map<number, { resolve(value: unknown): void; reject(reason: Error): void }>();
  let last = 0;
  createInterface({ input: child.stdout }).on('line', (line) => {
    const { id, value, failed } = JSON.parse(line) as { id: number; value?: unknown; failed?: string };
    const asked = waiting.get(id);
    waiting.delete(id);
    if (failed === undefined) asked?.resolve(value);
    else asked?.reject(new Error(failed));
  });
  child.once('exit', (code) => {
    for (const { reject } of waiting.values()) reject(new Error(`The driver ended with ${code}.`));
  });
  return {
    ask: (request: object): Promise<unknown> =>
      new Promise((resolve, reject) => {
        last += 1;
        waiting.set(last, { resolve, reject });
        child.stdin.write(`${JSON.stringify({ id: last, ...request })}\n`);
      }),
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

let offices = 0;

/** Milliseconds in which an office that has just started opens its first document. */
const OPENING = 20_000;

/** Starts an office; one that hangs as it opens its first document is ended and started anew. */
const launch = async (profile: string, start: Start, tries = 4): Promise<Omit<Office, 'folder'>> => {
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
  const child = spawn(SOFFICE, words, { stdio: 'ignore', env: { ...process.env, ...env }, detached: true });
  const driver = startDriver();
  const kill = async () => {
    for (const pid of processesOf(profile)) process.kill(pid, 'SIGKILL');
    await driver.end();
  };
  await driver.ask({ do: 'connect', pipe, seconds: 60 });
  // It answers before its main loop runs; a document opened in between is waited for without end.
  await pause(window ? 2_000 : 300);
  const opened = driver
    .ask({ do: 'open_document' })
    .then((doc) => driver.ask({ do: 'close', doc }))
    .then(() => true);
  // Where the office is ended because it hangs, nobody waits for this answer any more.
  opened.catch(() => undefined);
  if (!(await Promise.race([opened, pause(OPENING).then(() => false)]))) {
    await kill();
    if (tries <= 1)
      throw new Error(`LibreOffice opened no document within ${OPENING / 1000} s, again and again.`);
    return launch(profile, start, tries - 1);
  }
  return {
    pids: () => processesOf(profile),
    userFolder: join(profile, 'user'),
    ask: driver.ask as Office['ask'],
    end: async () => {
      // An office that is still busy with itself says no; the bridge goes away with it, so an answer may never come.
      for (let asked = 0; asked < 5 && running(child); asked += 1) {
        void driver.ask({ do: 'end' }).catch(() => undefined);
        await Promise.race([ended(child), pause(3_000)]);
      }
      await kill();
    },
  };
};

const prepared = join(tmpdir(), 'wandcount-calc-profiles');

/** A profile with the extension installed, made once for the same extension. */
const profileWithExtension = async (): Promise<string> => {
  await unlessFresh('calc', makeExtension);
  const profile = join(
    prepared,
    createHash('sha256').update(readFileSync(extension)).digest('hex').slice(0, 16),
  );
  if (existsSync(profile)) return profile;
  const fresh = mkdtempSync(join(tmpdir(), 'wandcount-install-'));
  const office = await launch(fresh, {});
  await office.ask({ do: 'install', path: extension });
  await office.end();
  mkdirSync(prepared, { recursive: true });
  cpSync(fresh, profile, { recursive: true });
  rmSync(fresh, { recursive: true });
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
  const profile = join(folder, 'profile');
  if (start.extension !== false) cpSync(await profileWithExtension(), profile, { recursive: true });
  if (start.locale !== undefined) setLocale(profile, start.locale);
  const office = await launch(profile, start);
  return {
    ...office,
    folder,
    end: async () => {
      await office.end();
      rmSync(folder, { recursive: true, force: true });
    },
  };
};
