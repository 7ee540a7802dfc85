import { spawnSync } from 'node:child_process';
import {
  chmodSync,
  copyFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';

import { root } from '../../addin/build/paths.mjs';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'wandcount-build-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

test.each([
  [[], 'none is named'],
  [['amiga'], '“amiga” is none of them'],
])('a package with Node for %j is refused in one sentence', (platform, why) => {
  const words = ['addin/build/calc/build.mjs', '--with-engine', ...platform];
  const { status, stderr } = spawnSync(process.execPath, words, { cwd: root, encoding: 'utf8' });
  expect(status).toBe(1);
  expect(stderr.trim()).toBe(
    `--with-engine brings Node for linux-x64, darwin-x64, darwin-arm64, win-x64; ${why}.`,
  );
});

test('packages are not installed into a folder that node_modules only links to', () => {
  const [project, elsewhere, programs] = ['project', 'elsewhere', 'programs'].map((name) =>
    join(folder, name),
  ) as [string, string, string];
  const build = join(project, 'addin', 'build');
  for (const made of [build, elsewhere, programs]) mkdirSync(made, { recursive: true });
  for (const name of ['dependencies.mjs', 'paths.mjs'])
    copyFileSync(join(root, 'addin', 'build', name), join(build, name));
  writeFileSync(join(project, 'package-lock.json'), '{}');
  symlinkSync(elsewhere, join(project, 'node_modules'));
  const mark = join(folder, 'npm-ran');
  writeFileSync(join(programs, 'npm'), `#!/bin/sh\n: > '${mark}'\n`);
  chmodSync(join(programs, 'npm'), 0o755);
  const script = `const { ensurePackages } = await import(${JSON.stringify(join(build, 'dependencies.mjs'))}); ensurePackages();`;
  const { status, stderr } = spawnSync(process.execPath, ['--input-type=module', '-e', script], {
    env: { PATH: programs },
    encoding: 'utf8',
  });
  expect(status).not.toBe(0);
  expect(stderr).toContain('node_modules is a link');
  expect(existsSync(mark)).toBe(false);
});
