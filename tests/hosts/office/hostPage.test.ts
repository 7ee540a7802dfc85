import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';

import { root } from '../../../addin/build/paths.mjs';
import { BASELINE } from '../../../addin/hosts/office/baseline';
import packageJson from '../../../package.json';

const page = readFileSync(join(root, 'addin/hosts/office/README.md'), 'utf8');

test('the host page names only files and commands that exist', () => {
  const paths = [...page.matchAll(/`((?:addin|tests)\/[\w./-]+)`/g)].map(([, path]) => path!);
  expect(paths.length).toBeGreaterThan(8);
  expect(paths.filter((path) => !existsSync(join(root, path)))).toEqual([]);
  const commands = [...page.matchAll(/npm run ([\w:]+)/g)].map(([, name]) => name!);
  expect(commands.filter((name) => !Object.keys(packageJson.scripts).includes(name))).toEqual([]);
});

test('the host page names the sets that the manifest declares', () => {
  for (const [set, version] of Object.entries(BASELINE)) expect(page).toContain(`${set} ${version}`);
});
