import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';

import { root } from '../../../../addin/build/paths.mjs';
import { PYTHON } from '../office';

/* Where Node is looked for on computers that a test only tells of; each test names all the programs there are. */

type System = 'win32' | 'darwin' | 'linux';

const ENVIRONMENTS: Readonly<Record<System, Readonly<Record<string, string>>>> = {
  win32: {
    PATH: String.raw`C:\Windows\system32;C:\Windows`,
    PATHEXT: '.COM;.EXE;.BAT;.CMD',
    USERPROFILE: String.raw`C:\Users\Ada`,
    APPDATA: String.raw`C:\Users\Ada\AppData\Roaming`,
    LOCALAPPDATA: String.raw`C:\Users\Ada\AppData\Local`,
    ProgramFiles: String.raw`C:\Program Files`,
    'ProgramFiles(x86)': String.raw`C:\Program Files (x86)`,
    NVM_SYMLINK: String.raw`C:\nvm4w\nodejs`,
  },
  // What programs get that are started from the desktop.
  darwin: { PATH: '/usr/bin:/bin:/usr/sbin:/sbin', HOME: '/Users/ada' },
  linux: { PATH: '/usr/bin:/bin', HOME: '/people/ada' },
};

const COMPONENT = join(root, 'addin', 'hosts', 'calc', 'python', 'pythonpath');

interface Computer {
  readonly environment?: Readonly<Record<string, string>>;
  /** Node programs that are there but may not be run. */
  readonly locked?: readonly string[];
}

const programs = (paths: readonly string[], runnable: boolean): Record<string, boolean> =>
  Object.fromEntries(paths.map((path) => [path, runnable]));

/** The program that the component takes on a computer with these, null where it takes none. */
const taken = (system: System, there: readonly string[], { environment, locked = [] }: Computer = {}) => {
  const pretended = join(root, 'tests', 'hosts', 'calc', 'engine', 'pretendedComputer.py');
  const input = JSON.stringify({
    platform: system,
    component: COMPONENT,
    package: system === 'win32' ? String.raw`C:\package` : '/package',
    profile: '/no/profile',
    environment: { ...ENVIRONMENTS[system], ...environment },
    files: { ...programs(there, true), ...programs(locked, false) },
  });
  const { status, stdout, stderr } = spawnSync(PYTHON, ['-B', pretended], { input, encoding: 'utf8' });
  if (status !== 0) throw new Error(stderr);
  return JSON.parse(stdout) as string | null;
};

const USUAL: Readonly<Record<System, Readonly<Record<string, string>>>> = {
  win32: {
    'the installer’s folder': String.raw`C:\Program Files\nodejs\node.exe`,
    'that of 32 bits': String.raw`C:\Program Files (x86)\nodejs\node.exe`,
    'one user’s programs': String.raw`C:\Users\Ada\AppData\Local\Programs\nodejs\node.exe`,
    'nvm’s link': String.raw`C:\nvm4w\nodejs\node.exe`,
    Volta: String.raw`C:\Users\Ada\AppData\Local\Volta\bin\node.exe`,
    fnm: String.raw`C:\Users\Ada\AppData\Roaming\fnm\node-versions\v22.11.0\installation\node.exe`,
    Scoop: String.raw`C:\Users\Ada\scoop\apps\nodejs-lts\current\node.exe`,
  },
  darwin: {
    Homebrew: '/opt/homebrew/bin/node',
    'Homebrew’s version beside others': '/opt/homebrew/opt/node@22/bin/node',
    'the installer’s folder': '/usr/local/bin/node',
    'Homebrew’s version on Intel': '/usr/local/opt/node@20/bin/node',
    MacPorts: '/opt/local/bin/node',
    nvm: '/Users/ada/.nvm/versions/node/v22.11.0/bin/node',
    Volta: '/Users/ada/.volta/bin/node',
    fnm: '/Users/ada/Library/Application Support/fnm/node-versions/v22.11.0/installation/bin/node',
  },
  linux: {
    'the local programs': '/usr/local/bin/node',
    Snap: '/snap/bin/node',
    'the old name': '/usr/bin/nodejs',
    'a folder in /opt': '/opt/node-v22.11.0-linux-x64/bin/node',
    'the folder of the archive’s guide': '/usr/local/lib/nodejs/node-v22.11.0-linux-x64/bin/node',
    'one user’s programs': '/people/ada/.local/bin/node',
    nvm: '/people/ada/.nvm/versions/node/v22.11.0/bin/node',
    Volta: '/people/ada/.volta/bin/node',
    fnm: '/people/ada/.local/share/fnm/node-versions/v22.11.0/installation/bin/node',
    asdf: '/people/ada/.asdf/installs/nodejs/22.11.0/bin/node',
    mise: '/people/ada/.local/share/mise/installs/node/22.11.0/bin/node',
    n: '/people/ada/n/bin/node',
  },
};

describe.each(Object.keys(USUAL) as System[])('on %s', (system) => {
  test.each(Object.entries(USUAL[system]))('%s', (_, path) => {
    expect(taken(system, [path])).toBe(path);
  });

  test('none where there is none', () => {
    expect(taken(system, [])).toBeNull();
    const elsewhere = system === 'win32' ? String.raw`D:\tools\node.exe` : '/srv/tools/node';
    expect(taken(system, [elsewhere])).toBeNull();
  });

  test('one that may not be run is passed over', () => {
    const [first, second] = Object.values(USUAL[system]) as [string, string];
    expect(taken(system, [second], { locked: [first] })).toBe(second);
  });

  test('a carried one that the user may not make runnable is passed over', () => {
    const carried = system === 'win32' ? String.raw`C:\package\engine\node.exe` : '/package/engine/node';
    const [first] = Object.values(USUAL[system]) as [string];
    expect(taken(system, [first, carried])).toBe(carried);
    expect(taken(system, [first], { locked: [carried] })).toBe(first);
  });

  test('PATH goes before them all, and what is pointed at before PATH', () => {
    const folder = system === 'win32' ? String.raw`D:\tools` : '/srv/tools';
    const onPath = system === 'win32' ? String.raw`D:\tools\node.exe` : '/srv/tools/node';
    const usual = Object.values(USUAL[system]);
    const there = [...usual, onPath];
    const found = taken(system, there, { environment: { PATH: folder } });
    // Windows' names of programs come with an ending in whatever letters PATHEXT has.
    expect(found?.toLowerCase()).toBe(onPath.toLowerCase());
    const pointed = { PATH: folder, WANDCOUNT_NODE: usual[1]! };
    expect(taken(system, there, { environment: pointed })).toBe(usual[1]);
    expect(taken(system, [onPath], { environment: pointed })).toBeNull();
  });
});

test.each<[System, (version: string) => string]>([
  ['linux', (version) => `/people/ada/.nvm/versions/node/${version}/bin/node`],
  ['linux', (version) => `/usr/local/lib/nodejs/node-${version}-linux-x64/bin/node`],
  ['darwin', (version) => `/Users/ada/.nvm/versions/node/${version}/bin/node`],
  ['win32', (version) => USUAL.win32.fnm!.replace('v22.11.0', version)],
])('of several versions on %s the newest', (system, place) => {
  const versions = ['v20.9.0', 'v22.2.1', 'v9.11.2', 'v22.11.0', 'v18.20.4'];
  expect(taken(system, versions.map(place))).toBe(place('v22.11.0'));
});
