import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';

import { bundle } from '../../addin/build/bundle.mjs';
import { Licences, LICENCES } from '../../addin/build/licences.mjs';
import calc from '../../addin/build/webpack.calc.mjs';
import functions from '../../addin/build/webpack.functions.mjs';
import office from '../../addin/build/webpack.office.mjs';
import workbench from '../../addin/build/webpack.workbench.mjs';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'wandcount-licences-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

const put = (path: string, content: string | object): void => {
  const file = join(folder, path);
  mkdirSync(dirname(file), { recursive: true });
  writeFileSync(file, typeof content === 'string' ? content : JSON.stringify(content));
};

const trowel = (name: string, manifest: object, files: Readonly<Record<string, string>> = {}): void => {
  put(`node_modules/${name}/package.json`, { name, version: '1.2.3', main: 'lib/index.js', ...manifest });
  put(`node_modules/${name}/lib/index.js`, `export const dig = () => '${name}';`);
  // As packages tell the kind of their modules.
  put(`node_modules/${name}/lib/package.json`, { type: 'module' });
  for (const [file, text] of Object.entries(files)) put(`node_modules/${name}/${file}`, text);
};

/** The licences beside a bundle of what is imported. */
const made = async (...imported: readonly string[]): Promise<string> => {
  const names = imported.map((name, index) => `import { dig as dig${index} } from '${name}';`);
  put(
    'entry.js',
    `${names.join('\n')}\nconsole.log(${imported.map((_name, index) => `dig${index}()`).join()});`,
  );
  const output = { path: join(folder, 'made') };
  const entry = join(folder, 'entry.js');
  await bundle({ mode: 'production', context: folder, entry, output, plugins: [new Licences()] });
  return readFileSync(join(folder, 'made', LICENCES), 'utf8');
};

describe('the licences beside a bundle', () => {
  test('are those of every package in it, in the order of their names, one text once', async () => {
    trowel('spade', { license: 'ISC' }, { 'LICENSE.md': 'Dig who will.\r\n', NOTICE: 'Sharp.' });
    trowel('fork', { license: 'MIT', author: { name: 'A. Gardener' } }, { LICENCE: 'Fork freely.' });
    trowel('rake', { license: 'MIT' }, { LICENSE: 'Fork freely.' });
    trowel('unused', { license: 'MIT' }, { LICENSE: 'Nobody asks.' });
    expect(await made('spade', 'rake', 'fork')).toBe(
      [
        'fork 1.2.3, by A. Gardener: MIT',
        'rake 1.2.3: MIT',
        '',
        'Fork freely.',
        '',
        '-'.repeat(78),
        '',
        'spade 1.2.3: ISC',
        '',
        'Dig who will.',
        '',
        'Sharp.',
        '',
      ].join('\n'),
    );
  });

  test('a package that brings no text is told to do so', async () => {
    trowel('dibber', { license: 'MIT', author: 'B. Gardener' });
    expect(await made('dibber')).toContain('dibber 1.2.3, by B. Gardener: MIT\n\nThe package brings no text');
  });

  test('a package without a licence stops the build', async () => {
    trowel('found', {});
    await expect(made('found')).rejects.toThrow('found 1.2.3 is bundled and tells no licence.');
  });

  test.each(Object.entries({ calc, functions, office, workbench }))(
    'are written for %s',
    (_name, configuration) => {
      expect(configuration({ mode: 'production' }).plugins.some((plugin) => plugin instanceof Licences)).toBe(
        true,
      );
    },
  );
});
