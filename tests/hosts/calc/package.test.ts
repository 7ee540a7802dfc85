import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { strFromU8, unzipSync } from 'fflate';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import {
  functionList,
  functionRegistration,
  typeDescription,
} from '../../../addin/build/calc/functionRegistration';
import { menu, type Entry } from '../../../addin/build/calc/menu';
import { buildExtension, extension, extensionBytes } from '../../../addin/build/calc/makeExtension.mjs';
import { LICENCES } from '../../../addin/build/licences.mjs';
import { root } from '../../../addin/build/paths.mjs';
import { catalogue, NAMESPACE, type FunctionEntry } from '../../../functions';
import { actionNamed, actions } from '../../../taskpane/actions/actionNamed';
import { isSection } from '../../../taskpane/state';
import { PYTHON } from './office';

describe('the package', () => {
  let folder: string;
  let first: Uint8Array;
  let second: Uint8Array;
  beforeAll(async () => {
    await buildExtension();
    first = readFileSync(extension);
    folder = mkdtempSync(join(tmpdir(), 'wandcount-package-'));
    second = await extensionBytes(folder);
  });
  afterAll(() => rmSync(folder, { recursive: true }));

  test('is the same to the byte when it is made again elsewhere', () => {
    expect(Buffer.from(second).equals(Buffer.from(first))).toBe(true);
  });

  test('holds every file that its manifest and its registrations name', () => {
    const files = unzipSync(first);
    const text = (path: string): string => strFromU8(files[path]!);
    const listed = [...text('META-INF/manifest.xml').matchAll(/full-path="([^"]+)"/g)].map(
      ([, path]) => path!,
    );
    expect(listed).toContain('feed.idl');
    const named = [...text('Sidebar.xcu').matchAll(/vnd\.sun\.star\.extension:\/\/[^/]+\/([^<]+)/g)].map(
      ([, path]) => path!,
    );
    const described = [...text('description.xml').matchAll(/xlink:href="([^"]+)"/g)].map(([, path]) => path!);
    for (const path of [
      ...listed,
      ...named,
      ...described,
      'engine.cjs',
      'LICENSE',
      LICENCES,
      'help/index.html',
      'panel.xdl',
    ])
      expect(Object.keys(files)).toContain(path);
  });

  test('brings the licence of what is bundled into its engine', () => {
    const licence = readFileSync(join(root, 'node_modules', 'zod', 'LICENSE'), 'utf8').trim();
    expect(strFromU8(unzipSync(first)[LICENCES]!)).toContain(licence);
  });

  test('names no folder of the computer that made it', () => {
    const files = unzipSync(first);
    const here = process.cwd();
    for (const [path, bytes] of Object.entries(files))
      expect(strFromU8(bytes, true).includes(here), path).toBe(false);
  });

  test('has a picture of the mark in each size that it names', () => {
    const pictures = Object.entries(unzipSync(first)).flatMap(([path, bytes]) => {
      const size = /^img\/mark-(\d+)(-dark)?\.png$/.exec(path)?.[1];
      return size === undefined ? [] : [{ size: Number(size), bytes }];
    });
    expect(pictures.length).toBeGreaterThan(1);
    for (const { size, bytes } of pictures) {
      const view = new DataView(bytes.buffer, bytes.byteOffset);
      expect([view.getUint32(16), view.getUint32(20)]).toEqual([size, size]);
    }
  });

  // LibreOffice 7.4 and 24.2 of The Document Foundation bring Python 3.8.
  test('is written in Python 3.8', () => {
    const sources = Object.entries(unzipSync(first)).filter(([path]) => path.endsWith('.py'));
    expect(sources.length).toBeGreaterThan(10);
    const reads = 'import ast, sys; ast.parse(sys.stdin.read(), feature_version=(3, 8))';
    for (const [path, bytes] of sources) {
      const { status, stderr } = spawnSync(PYTHON, ['-c', reads], { input: bytes, encoding: 'utf8' });
      expect(status, `${path}: ${stderr}`).toBe(0);
      // Of the library what came with 3.9 and 3.10 and is likely to be used.
      expect(strFromU8(bytes), path).not.toMatch(
        /functools\.cache\b|\.remove(prefix|suffix)\(|itertools\.pairwise|\bstrict=|to_thread|\.bit_count\(/,
      );
    }
  });
});

/** Two functions that no one has, so that the registration is seen for itself. */
const invented = [
  {
    name: 'TROWELS',
    summary: 'Trowels for a bed & its edge',
    parameters: [
      {
        name: 'bed_length',
        description: 'Length of the bed',
        type: 'number',
        optional: false,
        range: false,
        allowed: 'more than 0',
      },
      {
        name: 'holes',
        description: 'Holes dug',
        type: 'any',
        optional: true,
        range: true,
        allowed: '0 or more',
        otherwise: 'none',
      },
    ],
    result: { kind: 'number', description: 'Trowels' },
  },
  {
    name: 'ROWSOFTWINE',
    summary: 'Rows of twine',
    parameters: [
      { name: 'bed', description: 'Its name', type: 'text', optional: false, range: false, allowed: 'a bed' },
    ],
    result: { kind: 'rows', description: 'One row a line' },
  },
] as unknown as readonly FunctionEntry[];

describe('the registration of functions', () => {
  test('declares each function with arguments of any kind', () => {
    expect(typeDescription(invented)).toBe(
      [
        'module org {',
        'module wandcount {',
        '    interface XFeed: com::sun::star::uno::XInterface {',
        '      any trowels([in] any bedLength, [in] any holes);',
        '      sequence< sequence< any > > rowsoftwine([in] any bed);',
        '    };',
        '};',
        '};',
        '',
      ].join('\n'),
    );
  });

  test('tells the component which functions answer with rows', () => {
    expect(JSON.parse(functionList(invented))).toEqual([
      { method: 'trowels', name: 'TROWELS', rows: false },
      { method: 'rowsoftwine', name: 'ROWSOFTWINE', rows: true },
    ]);
  });

  test('tells the wizard names and descriptions, whatever signs are in them', async () => {
    await expect(functionRegistration(invented, 'FEED')).toMatchFileSnapshot('registration.golden.xml');
  });

  test('refuses a name that the registration cannot carry', () => {
    const wrong = (name: string) => () =>
      typeDescription([{ ...invented[0]!, parameters: [{ ...invented[0]!.parameters[0]!, name }] }]);
    expect(wrong('in')).toThrow('cannot stand');
    expect(wrong('Größe')).toThrow('cannot stand');
  });

  test('knows every function of the catalogue', () => {
    const registration = functionRegistration(catalogue, NAMESPACE);
    for (const { name } of catalogue) expect(registration).toContain(`>${NAMESPACE}.${name}<`);
  });
});

describe('the menu', () => {
  const entries = (list: (typeof menu)['entries']): Entry[] =>
    list.flatMap((entry) => ('command' in entry ? [entry] : entry.entries));
  const own = ['show', 'tryAgain', 'chooseNode', 'showLog', 'help'];

  test('leads to sections and actions that the pane has', () => {
    for (const { command } of entries(menu.entries)) {
      const [kind, ...rest] = command.split('.');
      const name = rest.join('.');
      if (kind === 'open') expect(isSection(name), name).toBe(true);
      else if (kind === 'press') expect(actionNamed(name), name).toBeDefined();
      else expect(own).toContain(command);
    }
  });

  test('has every action of the pane', () => {
    const commands = entries(menu.entries).map(({ command }) => command);
    const missing = Object.keys(actions).filter((id) => !commands.includes(`press.${id}`));
    expect(missing).toEqual([]);
  });

  const mnemonics = (list: readonly { readonly title: string }[]): string[] =>
    list.map(({ title }) => /~(.)/.exec(title)?.[1]?.toLowerCase() ?? title);

  test('has a letter of its own for every entry', () => {
    for (const list of [
      menu.entries,
      ...menu.entries.flatMap((entry) => ('entries' in entry ? [entry.entries] : [])),
    ])
      expect(new Set(mnemonics(list)).size).toBe(list.length);
  });
});
